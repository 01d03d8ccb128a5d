/** A remark that says more than its text: a caution of a pack, say, with its code and source. */
export interface RemarkWithText {
  /** What a reader is told; plain, no markup. */
  readonly text: string;
}

/** Something that a reader is told. */
export type Remark = string | RemarkWithText;
