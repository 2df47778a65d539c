/**
 * The address of a file of the built program, from the folder of its entries (out/main): this code may run from an
 * entry there or from a part that several entries share, one folder down.
 */
export function builtFile(pathFromEntries: string): URL {
  const here = new URL(import.meta.url);
  const folder = here.pathname.includes('/parts/') ? new URL('..', here) : new URL('.', here);
  return new URL(pathFromEntries, folder);
}
