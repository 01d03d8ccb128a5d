/**
 * Reads CSV as the grammar of RFC 4180, section 2, has it (from memory): fields between commas, records ended by CR LF, a quoted
 * field may hold commas, line breaks and doubled quotes. Written for the tests, apart from the writer.
 */
export function parseCsv(text: string): string[][] {
  const records: string[][] = [];
  let position = 0;
  while (position < text.length) {
    const record: string[] = [];
    for (;;) {
      let field = "";
      if (text[position] === '"') {
        position += 1;
        while (text[position] !== '"' || text[position + 1] === '"') {
          if (position >= text.length) throw new Error("a quoted field does not end");
          if (text[position] === '"') position += 1;
          field += text[position];
          position += 1;
        }
        position += 1;
      } else {
        while (position < text.length && text[position] !== "," && text[position] !== "\r") {
          if (text[position] === '"' || text[position] === "\n")
            throw new Error("a bare field holds a quote or a line break");
          field += text[position];
          position += 1;
        }
      }
      record.push(field);
      if (text[position] === ",") {
        position += 1;
        continue;
      }
      if (text.slice(position, position + 2) !== "\r\n") throw new Error("a record does not end in CR LF");
      position += 2;
      break;
    }
    records.push(record);
  }
  return records;
}
