/** Something that a reader is told: a text, or an object that carries one, such as a caution of a pack with its code and source. */
export type Remark = string | { readonly text: string };
