import type { Answer } from '../../main/requests/run.ts';
import type { ServiceEvent } from '../../main/workers/service.ts';
import type { Bridge } from './bridge.ts';
import { plainJson } from './plain-json.ts';

const tokenKey = 'tarewing-token';
const reconnectMs = 1_000;
/** 24 random bytes; the address of a screen ('#loading') never looks like it. */
const oneTimeCode = /^[\w-]{32}$/;

/**
 * The bridge over HTTP to the loopback host that served this page. The address brings a one-time code, which is
 * exchanged for a token; the token stays in this tab, so that reloading the page keeps working.
 */
export async function loopbackBridge(): Promise<Bridge> {
  const token = await findToken();
  const listeners = new Set<(event: ServiceEvent) => void>();
  const emit = (event: ServiceEvent) => {
    for (const listener of listeners) listener(event);
  };
  // Questions are asked only once the window hears of changes: none can fall between the two.
  await new Promise<void>((connected) => void followEvents(token, emit, connected));

  return {
    async request(name, input, call) {
      try {
        return (await post(token, '/request', plainJson({ name, input, call }))) as Answer;
      } catch (error) {
        return refusedAnswer(error);
      }
    },
    cancel(call) {
      void post(token, '/cancel', plainJson({ call })).catch(() => undefined);
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async pathOf(file) {
      const response = await fetch('/file', {
        method: 'POST',
        headers: {
          'X-Tarewing-Token': token,
          'Content-Type': 'application/octet-stream',
          'X-File-Name': encodeURIComponent(file.name),
        },
        body: file,
      });
      const answer = (await response.json()) as { path: string } | Answer;
      if ('path' in answer) return answer.path;
      throw new Error(answer.ok ? 'The file could not be read.' : answer.problem.sentence);
    },
    print() {
      window.print();
      return Promise.resolve();
    },
  };
}

async function findToken(): Promise<string> {
  const code = location.hash.slice(1);
  if (oneTimeCode.test(code)) {
    // Out of sight and out of the history at once; it works only once anyway.
    history.replaceState(null, '', '/');
    const answer = await post('', '/session', plainJson({ code }));
    if (
      typeof answer === 'object' &&
      answer !== null &&
      'token' in answer &&
      typeof answer.token === 'string'
    )
      sessionStorage.setItem(tokenKey, answer.token);
  }
  // Without one the window still opens: its first request is refused with the sentence that says what to do.
  return sessionStorage.getItem(tokenKey) ?? '';
}

async function post(token: string, path: string, body: string): Promise<unknown> {
  const response = await fetch(path, {
    method: 'POST',
    headers: { 'X-Tarewing-Token': token, 'Content-Type': 'application/json' },
    body,
  });
  return response.json();
}

/** Hear events, again and again where the stream ends; `connected` is called when the first attempt is over. */
async function followEvents(
  token: string,
  emit: (event: ServiceEvent) => void,
  connected: () => void,
): Promise<void> {
  for (;;) {
    try {
      const response = await fetch('/events', { headers: { 'X-Tarewing-Token': token } });
      connected();
      if (response.status === 403) return;
      if (response.body !== null)
        await readLines(response.body, (line) => {
          emit(JSON.parse(line) as ServiceEvent);
        });
    } catch {
      // The program is gone or was asleep; requests say so to the person.
      connected();
    }
    await new Promise((resolve) => setTimeout(resolve, reconnectMs));
    // What happened meanwhile was missed.
    emit({ type: 'changed', areas: ['library'] });
  }
}

async function readLines(body: ReadableStream<Uint8Array<ArrayBuffer>>, each: (line: string) => void) {
  const reader = body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + value).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line !== '') each(line);
  }
}

function refusedAnswer(error: unknown): Answer {
  const sentence =
    error instanceof TypeError && error.message.includes('fetch')
      ? 'The program behind this window has ended. What was saved is safe; start it again.'
      : error instanceof Error
        ? error.message
        : String(error);
  return { ok: false, problem: { code: 'internal', sentence, fields: [] } };
}
