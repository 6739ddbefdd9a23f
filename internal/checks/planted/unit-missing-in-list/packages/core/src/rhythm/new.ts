/** A note. */
export type Note = { readonly edges: readonly { readonly far: number | null }[] };
