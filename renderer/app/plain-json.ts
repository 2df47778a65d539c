/**
 * Write a value as JSON, refusing whatever JSON would change in silence: a figure that is none would arrive as
 * null and read as 'not given', a function or a class would lose what it is.
 * @throws Error naming the path and what stands there
 */
export function plainJson(value: unknown): string {
  requirePlain(value, '', new Set());
  return JSON.stringify(value);
}

function requirePlain(value: unknown, path: string, above: Set<object>): void {
  if (value === null || typeof value === 'string' || typeof value === 'boolean' || value === undefined)
    return;
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return;
    throw cannotSend(path, String(value));
  }
  if (typeof value !== 'object') throw cannotSend(path, `a ${typeof value}`);
  if (above.has(value)) throw cannotSend(path, 'a circle');
  const isPlain =
    Array.isArray(value) || [Object.prototype, null].includes(Object.getPrototypeOf(value) as object);
  if (!isPlain) throw cannotSend(path, `a ${value.constructor.name}`);
  const within = new Set(above).add(value);
  for (const [key, each] of Object.entries(value))
    requirePlain(each, path === '' ? key : `${path}.${key}`, within);
}

function cannotSend(path: string, what: string): Error {
  return new Error(
    `${path === '' ? 'The input' : path} is ${what}, which cannot be sent. Nothing was changed.`,
  );
}
