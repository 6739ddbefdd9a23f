/** File names from titles, for whatever a lesson is taken away as. */

/**
 * A name of letters, digits and hyphens from a title, with an ending such as `.pdf`; `lesson` where the title has none.
 * @example fileNameOf('Première leçon!', '.pdf') // 'premiere-lecon.pdf'
 */
export function fileNameOf(title: string | null, ending: string): string {
  const plain = (title ?? '')
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
  return `${plain || 'lesson'}${ending}`;
}
