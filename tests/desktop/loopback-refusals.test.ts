import { request, type IncomingHttpHeaders } from 'node:http';
import { existsSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../../main/hosts/prepare.mjs';
import { startProgram, type Program } from './harness/program.ts';
import { withFolder } from './harness/with-window.ts';

// What the loopback host refuses, asked over a bare socket: no browser stands between and behaves well.

let program: Program;
let port = 0;
let code = '';
let token = '';
let letGo: () => void = () => undefined;

beforeAll(async () => {
  const folder = await new Promise<string>((resolve) => {
    void withFolder(
      (path) =>
        new Promise<void>((done) => {
          letGo = done;
          resolve(path);
        }),
    );
  });
  const args = ['--no-open', '--library', join(folder, 'library.tarewing')];
  program = startProgram([join(root, 'out/main/loopback.js'), ...args], join(folder, 'data'));
  const [, portText = '', codeText = ''] = await program.waitFor(/127\.0\.0\.1:(\d+)\/#(\S+)/);
  [port, code] = [Number(portText), codeText];
  const answer = await ask({ path: '/session', body: JSON.stringify({ code }), token: '' });
  token = String((JSON.parse(answer.body) as { token: string }).token);
});

afterAll(async () => {
  await program.end();
  letGo();
});

interface Asked {
  method?: string;
  path?: string;
  body?: string | Buffer;
  headers?: Record<string, string>;
  token?: string;
}

interface Answered {
  status: number;
  headers: IncomingHttpHeaders;
  body: string;
}

/** A request that would be granted, but for what the test changes in it. */
function ask({ method = 'POST', path = '/request', body, headers = {}, token: with_ = token }: Asked) {
  const content = body ?? JSON.stringify({ name: 'library.describe', input: {}, call: 'a' });
  return new Promise<Answered>((resolve, reject) => {
    const sent = request(
      {
        host: '127.0.0.1',
        port,
        method,
        path,
        headers: {
          Host: `127.0.0.1:${String(port)}`,
          Origin: `http://127.0.0.1:${String(port)}`,
          'Content-Type': 'application/json',
          'X-Tarewing-Token': with_,
          ...headers,
        },
      },
      (response) => {
        let text = '';
        response.on('data', (part: Buffer) => (text += part.toString('utf8')));
        response.on('end', () => {
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text });
        });
      },
    );
    sent.on('error', reject);
    sent.end(method === 'POST' ? content : undefined);
  });
}

function sentenceOf(answer: Answered): string {
  const body = JSON.parse(answer.body) as { ok: boolean; problem: { sentence: string } };
  expect(body.ok).toBe(false);
  return body.problem.sentence;
}

describe('The loopback host', () => {
  test('answers a request with the right host, origin, token and content type', async () => {
    const answer = await ask({});
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toMatchObject({
      ok: true,
      output: { schemaVersion: expect.any(Number) },
    });
  });

  test.each(['localhost:PORT', 'evil.example', '127.0.0.1', '127.0.0.1:1', 'evil.example:PORT'])(
    'refuses the host name %s, as a name that was made to point here brings it',
    async (name) => {
      const answer = await ask({ headers: { Host: name.replace('PORT', String(port)) } });
      expect(answer.status).toBe(421);
      expect(sentenceOf(answer)).toMatch(/answers only as/);
    },
  );

  test.each([
    'http://evil.example',
    'null',
    'http://localhost:PORT',
    'https://127.0.0.1:PORT',
    'http://127.0.0.1',
  ])('refuses a page of the origin %s, even with the token', async (origin) => {
    const answer = await ask({ headers: { Origin: origin.replace('PORT', String(port)) } });
    expect(answer.status).toBe(403);
    expect(sentenceOf(answer)).toMatch(/Only the window/);
  });

  test('refuses what a browser says another site sent, and lets no other page read or ask ahead', async () => {
    expect((await ask({ headers: { 'Sec-Fetch-Site': 'cross-site' } })).status).toBe(403);
    const preflight = await ask({ method: 'OPTIONS', headers: { Origin: 'http://evil.example' } });
    expect(preflight.status).toBe(403);
    expect(preflight.headers['access-control-allow-origin']).toBeUndefined();
  });

  test.each(['', 'wrong', 'x'.repeat(5000)])('refuses the token %j at every door', async (wrong) => {
    for (const path of ['/request', '/cancel', '/code', '/file'])
      expect((await ask({ path, token: wrong })).status, path).toBe(403);
    expect((await ask({ path: '/events', method: 'GET', token: wrong })).status).toBe(403);
  });

  test('exchanges the code of its address once', async () => {
    const again = await ask({ path: '/session', body: JSON.stringify({ code }), token: '' });
    expect(again.status).toBe(403);
    expect(sentenceOf(again)).toMatch(/used before/);
    for (const body of ['{}', '{"code":1}', '{"code":""}', '[]', 'null'])
      expect((await ask({ path: '/session', body, token: '' })).status, body).toBe(403);
  });

  test('gives whoever holds the token a fresh code, which works once', async () => {
    const { address } = JSON.parse((await ask({ path: '/code', body: '{}' })).body) as { address: string };
    const fresh = JSON.stringify({ code: new URL(address).hash.slice(1) });
    expect((await ask({ path: '/session', body: fresh, token: '' })).status).toBe(200);
    expect((await ask({ path: '/session', body: fresh, token: '' })).status).toBe(403);
  });

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''])(
    'refuses the content type %j, which a form of another page could send',
    async (type) => {
      const answer = await ask({ headers: { 'Content-Type': type } });
      expect(answer.status).toBe(415);
      expect(sentenceOf(answer)).toMatch(/application\/json/);
    },
  );

  test.each([
    '/../package.json',
    '/..%2fpackage.json',
    '/%2e%2e/%2e%2e/package.json',
    '/assets/../../main/loopback.js',
    '/..\\package.json',
    '//etc/passwd',
    '/etc/passwd',
    'file:///etc/passwd',
    '/assets/',
    '/index.html/..',
    '/__proto__',
    '/constructor',
    '/toString',
  ])('answers the path %s, outside the window, with 404', async (path) => {
    const answer = await ask({ method: 'GET', path });
    expect(answer.status).toBe(404);
    expect(answer.body).not.toMatch(/tarewing"|root:/);
  });

  test('refuses other methods than a door has', async () => {
    expect((await ask({ method: 'GET', path: '/request' })).status).toBe(405);
    expect((await ask({ method: 'DELETE', path: '/request' })).status).toBe(405);
    expect((await ask({ method: 'POST', path: '/events' })).status).toBe(405);
    expect((await ask({ method: 'POST', path: '/' })).status).toBe(405);
  });

  test.each(['nothing.there', 'toString', '__proto__', ''])(
    'refuses the unknown request %j',
    async (name) => {
      const answer = await ask({ body: JSON.stringify({ name, input: {}, call: 'a' }) });
      expect(JSON.parse(answer.body)).toMatchObject({ ok: false, problem: { code: 'unknown-request' } });
    },
  );

  test('refuses what is no request and what is not JSON', async () => {
    for (const body of ['{}', '[]', 'null', '3', '{"name":"library.describe"}', '{"name":1,"call":"a"}'])
      expect((await ask({ body })).status, body).toBe(400);
    const answer = await ask({ body: '{' });
    expect(answer.status).toBe(400);
    expect(sentenceOf(answer)).toMatch(/not JSON/);
  });

  test('refuses a field that the request does not have, and names it', async () => {
    const body = JSON.stringify({ name: 'library.describe', input: { extra: 1 }, call: 'a' });
    expect(sentenceOf(await ask({ body }))).toMatch(/'extra'/);
  });

  test('refuses a body over 4 MB, announced or not, and goes on answering', async () => {
    const large = Buffer.alloc(4 * 1024 ** 2 + 1, 0x20);
    const announced = await ask({ body: large }).catch((error: unknown) => error);
    const unannounced = await ask({ body: large, headers: { 'Transfer-Encoding': 'chunked' } }).catch(
      (error: unknown) => error,
    );
    // The answer may be lost because the connection is closed while the rest is still being sent.
    for (const each of [announced, unannounced])
      if (each instanceof Error) expect(each.message).toMatch(/ECONNRESET|EPIPE|socket hang up/);
      else expect((each as Answered).status).toBe(413);
    const justUnder = Buffer.concat([
      Buffer.from('{"name":"library.describe","input":{},"call":"a"}'),
      Buffer.alloc(4 * 1024 ** 2 - 1000, 0x20),
    ]);
    expect((await ask({ body: justUnder })).status).toBe(200);
  });

  test('keeps a sent file under its own name where only its owner can read it, until it ends', async () => {
    const answer = await ask({
      path: '/file',
      body: 'a,b\n1,2\n',
      headers: {
        'Content-Type': 'application/octet-stream',
        'X-File-Name': encodeURIComponent('Ostrey 2024 (März).csv'),
      },
    });
    const { path } = JSON.parse(answer.body) as { path: string };
    expect(basename(path)).toBe('Ostrey 2024 (März).csv');
    expect(readFileSync(path, 'utf8')).toBe('a,b\n1,2\n');
    expect(statSync(path).mode & 0o077).toBe(0);
    expect(statSync(dirname(dirname(path))).mode & 0o077).toBe(0);
  });

  test.each([
    '../outside.csv',
    '..',
    '.',
    '',
    'a/b.csv',
    'a\\b.csv',
    'C:b.csv',
    'a\u0000.csv',
    'a\n.csv',
    '%',
  ])('refuses a sent file with the name %j', async (name) => {
    const answer = await ask({
      path: '/file',
      body: 'x',
      headers: {
        'Content-Type': 'application/octet-stream',
        'X-File-Name': name === '%' ? '%' : encodeURIComponent(name),
      },
    });
    expect(answer.status).toBe(400);
    expect(sentenceOf(answer)).toMatch(/not the name of a file/);
  });

  test('sends the window with a policy that starts from nothing', async () => {
    for (const path of ['/', '/index.html']) {
      const { status, headers } = await ask({ method: 'GET', path, token: '' });
      expect(status).toBe(200);
      expect(headers['content-security-policy']).toMatch(
        /^default-src 'none'; script-src 'self'; style-src 'self'/,
      );
      expect(headers['content-security-policy']).not.toMatch(/unsafe|http|\*/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    }
  });

  test('listens on this computer alone', async () => {
    const { networkInterfaces } = await import('node:os');
    const outside = Object.values(networkInterfaces())
      .flat()
      .find((each) => each?.internal === false && each.family === 'IPv4');
    if (outside === undefined) return;
    await expect(fetch(`http://${outside.address}:${String(port)}/`)).rejects.toThrow();
  });
});

test('The loopback host leaves nothing in the temporary folder', async () => {
  await withFolder(async (folder) => {
    const temporary = join(folder, 'tmp');
    mkdirSync(temporary);
    const before = process.env['TMPDIR'];
    process.env['TMPDIR'] = temporary;
    const own = startProgram(
      [join(root, 'out/main/loopback.js'), '--no-open', '--library', join(folder, 'library.tarewing')],
      join(folder, 'data'),
    );
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
    const [, origin = '', ownCode = ''] = await own.waitFor(/(http:\/\/127\.0\.0\.1:\d+)\/#(\S+)/);
    const send = async (path: string, body: string, headers: Record<string, string>) =>
      (await (await fetch(origin + path, { method: 'POST', body, headers })).json()) as Record<
        string,
        string
      >;
    const { token: ownToken = '' } = await send('/session', JSON.stringify({ code: ownCode }), {
      'Content-Type': 'application/json',
    });
    const { path = '' } = await send('/file', 'x', {
      'Content-Type': 'application/octet-stream',
      'X-File-Name': 'a.csv',
      'X-Tarewing-Token': ownToken,
    });
    expect(path.startsWith(temporary)).toBe(true);
    expect(existsSync(path)).toBe(true);
    await own.end();
    expect(existsSync(path)).toBe(false);
    expect(existsSync(dirname(dirname(path)))).toBe(false);
  });
});
