const longest = 60;

/** A file name from a title: small letters, digits and hyphens. */
export function fileName(title: string, ending: 'csv' | 'html' | 'svg' | 'png'): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/g, '');
  return `${plain === '' ? 'endfloat' : plain}.${ending}`;
}
