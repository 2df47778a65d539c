/** '1 day', '165 days'. */
export function countOf(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${String(count)} ${what}s`;
}
