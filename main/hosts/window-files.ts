import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtFile } from '../workers/built-file.ts';

/** One file of the built window, ready to be sent. */
export interface WindowFile {
  body: Buffer<ArrayBuffer>;
  type: string;
}

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * Sent with every file of the window, by both hosts. The policy starts from nothing: scripts, workers, styles and fonts come
 * from the program alone, pictures also from what the window itself draws (export as PNG), and nothing is framed,
 * posted elsewhere or fetched from a network.
 */
export const windowHeaders: Record<string, string> = {
  'Content-Security-Policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "worker-src 'self'",
    "img-src 'self' blob: data:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'Permissions-Policy': ['camera', 'microphone', 'geolocation', 'usb', 'serial', 'hid', 'display-capture']
    .map((feature) => `${feature}=()`)
    .join(', '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/**
 * Read the built window once. Only what was there then can be asked for, so no path leads out of it, and a build
 * made meanwhile does not mix with the running one.
 * @returns the file under a path of an address ('/' is the page), or undefined
 */
export function loadWindowFiles(): (path: string) => WindowFile | undefined {
  const root = fileURLToPath(builtFile('../renderer/'));
  const files = new Map<string, WindowFile>();
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const type = types[extname(entry.name)];
    if (type === undefined) continue;
    const path = `/${file.slice(root.length).replaceAll('\\', '/')}`;
    files.set(path, { body: readFileSync(file), type });
  }
  return (path) => files.get(path === '/' ? '/index.html' : path);
}
