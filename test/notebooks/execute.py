"""Executes notebooks: python3 execute.py FOLDER NOTEBOOK... writes each, with fresh outputs, into the folder.

The kernel sometimes says that it is idle before its last output arrives, and a client that stops there loses it. This one reads
on: for long until there is an output, as every cell is to have one, and then a little longer.
"""

import os
import sys
from queue import Empty

import nbformat
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionComplete
from nbclient.util import ensure_async

SECONDS_FOR_AN_OUTPUT = 10
SECONDS_FOR_MORE = 0.3


class PatientClient(NotebookClient):
    async def _async_poll_output_msg(self, parent_msg_id, cell, cell_index):
        idle = False
        while True:
            try:
                patience = SECONDS_FOR_MORE if cell.outputs else SECONDS_FOR_AN_OUTPUT
                timeout = patience if idle else None
                message = await ensure_async(self.kc.iopub_channel.get_msg(timeout=timeout))
            except Empty:
                return
            if message["parent_header"].get("msg_id") != parent_msg_id:
                continue
            try:
                self.process_message(message, cell, cell_index)
            except CellExecutionComplete:
                idle = True


folder, *paths = sys.argv[1:]
for path in paths:
    notebook = nbformat.read(path, as_version=4)
    # As a person opens it: the kernel runs in the notebook's own folder.
    place = {"metadata": {"path": os.path.dirname(os.path.abspath(path))}}
    client = PatientClient(notebook, timeout=120, kernel_name="deno", record_timing=False, resources=place)
    client.execute()
    nbformat.write(notebook, os.path.join(folder, os.path.basename(path)))
