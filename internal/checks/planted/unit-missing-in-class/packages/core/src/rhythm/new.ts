/** A note. */
export class Note {
  readonly edges: number[] = [];
}
