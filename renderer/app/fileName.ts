/** The last part of a path, of either kind of system. */
export function fileName(path: string): string {
  return path.slice(lastSlash(path) + 1);
}

function lastSlash(path: string): number {
  return Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
}

/** The folder in which a path lies, as a path. */
export function folderPath(path: string): string | null {
  const at = lastSlash(path);
  return at <= 0 ? null : path.slice(0, at);
}
