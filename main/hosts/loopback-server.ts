import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Refusal, type ProblemCode } from '../requests/problem.ts';
import { problemOf, type Answer } from '../requests/run.ts';
import type { Keeper } from './keeper.ts';
import type { Keys } from './loopback-keys.ts';
import type { Uploads } from './uploads.ts';
import { windowHeaders, type WindowFile } from './window-files.ts';

/** A request's body: far above any form of the window, far below what would hurt. */
const bodyLimitBytes = 4 * 1024 ** 2;
/** A line now and then, so that a stream whose other end is gone is noticed. */
const heartbeatMs = 15_000;

export interface LoopbackServer {
  /** 'http://127.0.0.1:43210' */
  origin: string;
  keeper: Keeper;
  close(): Promise<void>;
}

export interface LoopbackParts {
  /** Begin to keep a library, now that the address is known. */
  keepAt(origin: string): Keeper;
  keys: Keys;
  uploads: Uploads;
  windowFile(path: string): WindowFile | undefined;
}

/** A refusal with the status that HTTP has for it. */
class HttpRefusal extends Refusal {
  readonly status: number;

  constructor(status: number, sentence: string, code: ProblemCode = 'input-refused') {
    super(code, sentence);
    this.status = status;
  }
}

/**
 * Serve the built window and the request table on this computer's own address, to whoever holds a token.
 * Other pages in the same browser and other people of the same computer can reach the port, so nothing is answered
 * on trust: the Host must be ours (no name that was made to point here), the Origin ours, the token known.
 */
export async function startLoopbackServer(parts: LoopbackParts): Promise<LoopbackServer> {
  const streams = new Set<ServerResponse>();
  const server = createServer((message, response) => {
    void serve(message, response).catch((error: unknown) => {
      refuse(message, response, error);
    });
  });
  // Large files arrive as slowly as the disk writes them.
  server.requestTimeout = 0;
  const port = await listenSomewhere(server);
  const hostName = `127.0.0.1:${String(port)}`;
  const origin = `http://${hostName}`;
  const keeper = parts.keepAt(origin);
  const stopListening = keeper.listen((event) => {
    for (const stream of streams) stream.write(`${JSON.stringify(event)}\n`);
  });

  async function serve(message: IncomingMessage, response: ServerResponse): Promise<void> {
    if (message.headers.host !== hostName)
      throw new HttpRefusal(421, `This address answers only as ${hostName}.`);
    const from = message.headers.origin;
    const site = message.headers['sec-fetch-site'];
    if ((from !== undefined && from !== origin) || site === 'cross-site' || site === 'same-site')
      throw new HttpRefusal(403, 'Only the window of this program may ask here.');
    const path = message.url ?? '/';
    const door = doors[path];
    if (door === undefined) {
      sendWindowFile(message, response, path);
      return;
    }
    if (message.method !== door.method)
      throw new HttpRefusal(405, `${path} is asked by ${door.method} alone.`);
    if (door.needsToken && !parts.keys.isToken(String(message.headers['x-tarewing-token'] ?? '')))
      throw new HttpRefusal(403, 'This window does not hold the key of the running program. Start it again.');
    if (door.contentType !== null && message.headers['content-type'] !== door.contentType)
      throw new HttpRefusal(415, `${path} needs the content type ${door.contentType}.`);
    await door.serve(message, response);
  }

  const doors: Record<string, Door | undefined> = {
    '/session': {
      method: 'POST',
      contentType: 'application/json',
      needsToken: false,
      async serve(message, response) {
        const code = field(await readJson(message), 'code');
        const token = typeof code === 'string' ? parts.keys.exchange(code) : null;
        if (token === null)
          throw new HttpRefusal(403, 'This address was used before. Run npm start again for a new one.');
        sendJson(response, 200, { token });
      },
    },
    '/code': {
      method: 'POST',
      contentType: 'application/json',
      needsToken: true,
      async serve(message, response) {
        await readJson(message);
        sendJson(response, 200, { address: `${origin}/#${parts.keys.newCode()}` });
      },
    },
    '/request': {
      method: 'POST',
      contentType: 'application/json',
      needsToken: true,
      async serve(message, response) {
        const body = await readJson(message);
        const name = field(body, 'name');
        const call = field(body, 'call');
        if (typeof name !== 'string' || typeof call !== 'string')
          throw new HttpRefusal(400, 'A request has a name, an input and a call.');
        sendJson(response, 200, await keeper.request(name, field(body, 'input'), call));
      },
    },
    '/cancel': {
      method: 'POST',
      contentType: 'application/json',
      needsToken: true,
      async serve(message, response) {
        const call = field(await readJson(message), 'call');
        if (typeof call !== 'string') throw new HttpRefusal(400, 'What is to be cancelled has a call.');
        keeper.cancel(call);
        sendJson(response, 200, {});
      },
    },
    '/file': {
      method: 'POST',
      contentType: 'application/octet-stream',
      needsToken: true,
      async serve(message, response) {
        const name = decodeName(String(message.headers['x-file-name'] ?? ''));
        sendJson(response, 200, { path: await parts.uploads.keep(name, message) });
      },
    },
    '/events': {
      method: 'GET',
      contentType: null,
      needsToken: true,
      serve(_, response) {
        response.writeHead(200, { ...plainHeaders, 'Content-Type': 'application/x-ndjson' });
        response.write('\n');
        streams.add(response);
        const heartbeat = setInterval(() => response.write('\n'), heartbeatMs);
        response.once('close', () => {
          clearInterval(heartbeat);
          streams.delete(response);
        });
        return Promise.resolve();
      },
    },
  };

  function sendWindowFile(message: IncomingMessage, response: ServerResponse, path: string): void {
    const file = parts.windowFile(path.split('?', 1)[0] ?? path);
    if (file === undefined) throw new HttpRefusal(404, 'There is nothing under this address.', 'not-found');
    if (message.method !== 'GET' && message.method !== 'HEAD')
      throw new HttpRefusal(405, 'Files of the window are only read.');
    response.writeHead(200, {
      ...windowHeaders,
      'Content-Type': file.type,
      'Content-Length': file.body.length,
      'Cache-Control': 'no-store',
    });
    response.end(message.method === 'HEAD' ? undefined : file.body);
  }

  return {
    origin,
    keeper,
    close: () =>
      new Promise((resolve) => {
        stopListening();
        for (const stream of streams) stream.end();
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}

interface Door {
  method: 'GET' | 'POST';
  contentType: string | null;
  needsToken: boolean;
  serve(message: IncomingMessage, response: ServerResponse): Promise<void>;
}

const plainHeaders = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

function sendJson(response: ServerResponse, status: number, value: unknown): void {
  response.writeHead(status, { ...plainHeaders, 'Content-Type': 'application/json' });
  response.end(JSON.stringify(value));
}

function refuse(message: IncomingMessage, response: ServerResponse, error: unknown): void {
  if (response.headersSent) {
    response.destroy();
    return;
  }
  const status = error instanceof HttpRefusal ? error.status : error instanceof Refusal ? 400 : 500;
  const answer: Answer = { ok: false, problem: problemOf(message.url ?? '', error) };
  // What is still being sent is not read to its end.
  response.setHeader('Connection', 'close');
  sendJson(response, status, answer);
}

async function readJson(message: IncomingMessage): Promise<unknown> {
  const tooLarge = () =>
    new HttpRefusal(
      413,
      `A request holds at most ${String(bodyLimitBytes / 1024 ** 2)} MB. Nothing was changed.`,
    );
  if (Number(message.headers['content-length'] ?? 0) > bodyLimitBytes) throw tooLarge();
  const pieces: Buffer[] = [];
  let bytes = 0;
  for await (const piece of message as AsyncIterable<Buffer>) {
    bytes += piece.length;
    if (bytes > bodyLimitBytes) throw tooLarge();
    pieces.push(piece);
  }
  try {
    return JSON.parse(Buffer.concat(pieces).toString('utf8'));
  } catch {
    throw new HttpRefusal(400, 'The request is not JSON. Nothing was changed.');
  }
}

function field(body: unknown, name: string): unknown {
  return typeof body === 'object' && body !== null && Object.hasOwn(body, name)
    ? (body as Record<string, unknown>)[name]
    : undefined;
}

function decodeName(encoded: string): string {
  try {
    return decodeURIComponent(encoded);
  } catch {
    return '';
  }
}

function listenSomewhere(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      resolve((server.address() as AddressInfo).port);
    });
  });
}
