/** A remark that carries its text among other things, such as a caution of a pack with its code and source. */
export interface RemarkWithText {
  /** What a reader is told. */
  readonly text: string;
}

/** Something that a reader is told: a text, or an object that carries one. */
export type Remark = string | RemarkWithText;
