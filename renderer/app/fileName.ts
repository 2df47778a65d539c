/** The last part of a path, of either kind of system. */
export function fileName(path: string): string {
  return path.slice(lastSlash(path) + 1);
}

/** The folder in which a path lies, by its own name: 'Documents'. */
export function folderName(path: string): string {
  const at = lastSlash(path);
  return at <= 0 ? path.slice(0, at + 1) : fileName(path.slice(0, at));
}

function lastSlash(path: string): number {
  return Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
}

/** The folder in which a path lies, as a path. */
export function folderPath(path: string): string | null {
  const at = lastSlash(path);
  return at <= 0 ? null : path.slice(0, at);
}
