import { EventEmitter } from 'node:events';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameFacts, FromProgram, Fetched, ProgramFacts, ToProgram } from './messages.ts';

// A double of the `electron` module for the program's own process: as much of it as electron.ts uses, with its
// rules about order (what must come before and what after ready). Windows are pages in the test's process.

const tell = (message: FromProgram) => process.send?.(message);
const windows = new Map<number, BrowserWindow>();
const facts: ProgramFacts = { webPreferences: [], userData: '', menuIsSet: false, privilegedSchemes: [] };

class App extends EventEmitter {
  isReadyNow = false;
  private readonly ready = Promise.withResolvers<undefined>();
  private lockPath: string | null = null;
  private isQuitting = false;

  setPath(name: string, path: string): void {
    if (name !== 'userData') throw new Error(`Failed to set path '${name}'`);
    facts.userData = path;
  }

  requestSingleInstanceLock(): boolean {
    mkdirSync(facts.userData, { recursive: true });
    const path = join(facts.userData, 'SingletonLock');
    try {
      writeFileSync(path, String(process.pid), { flag: 'wx' });
    } catch {
      if (isAlive(Number(readFileSync(path, 'utf8')))) {
        tell({ type: 'second-instance', userData: facts.userData });
        return false;
      }
      writeFileSync(path, String(process.pid));
    }
    this.lockPath = path;
    return true;
  }

  async whenReady(): Promise<void> {
    await this.ready.promise;
  }

  becomeReady(): void {
    this.isReadyNow = true;
    this.emit('ready');
    this.ready.resolve(undefined);
  }

  quit(): void {
    if (!this.isQuitting) {
      this.emit('before-quit', preventable());
      for (const window of [...windows.values()]) window.close();
    }
    this.isQuitting = true;
    const event = preventable();
    this.emit('will-quit', event);
    if (event.defaultPrevented) return;
    if (this.lockPath !== null) rmSync(this.lockPath, { force: true });
    process.exit(0);
  }

  get quitting(): boolean {
    return this.isQuitting;
  }
}

export const app = new App();

function preventable() {
  return {
    defaultPrevented: false,
    preventDefault() {
      this.defaultPrevented = true;
    },
  };
}

class WebContents extends EventEmitter {
  readonly windowId: number;
  openHandler: (details: { url: string }) => { action: string } = () => ({ action: 'allow' });

  constructor(windowId: number) {
    super();
    this.windowId = windowId;
  }

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }

  send(channel: string, ...args: unknown[]): void {
    tell({ type: 'send', window: this.windowId, channel, args });
  }

  print(): void {
    tell({ type: 'print', window: this.windowId });
  }
}

let windowCount = 0;

export class BrowserWindow extends EventEmitter {
  readonly id: number;
  readonly webContents: WebContents;
  private readonly preload: string;

  constructor(options: { webPreferences: { preload: string } & Record<string, unknown> }) {
    super();
    if (!app.isReadyNow) throw new Error('Cannot create BrowserWindow before app is ready');
    this.id = ++windowCount;
    this.preload = options.webPreferences.preload;
    facts.webPreferences.push({ ...options.webPreferences });
    this.webContents = new WebContents(this.id);
    windows.set(this.id, this);
    app.emit('web-contents-created', {}, this.webContents);
  }

  loadURL(url: string): Promise<void> {
    tell({ type: 'open', window: this.id, url, preload: readFileSync(this.preload, 'utf8') });
    setImmediate(() => this.emit('ready-to-show'));
    return Promise.resolve();
  }

  show(): void {
    this.emit('show');
  }

  isMinimized(): boolean {
    return false;
  }

  restore(): void {
    this.emit('restore');
  }

  focus(): void {
    tell({ type: 'focus', window: this.id });
  }

  close(): void {
    if (!windows.delete(this.id)) return;
    tell({ type: 'close', window: this.id });
    this.emit('closed');
    if (windows.size === 0 && !app.quitting) app.emit('window-all-closed');
  }
}

interface IpcEvent {
  sender: WebContents;
  senderFrame: { url: string; parent: object | null } | null;
}

class IpcMain extends EventEmitter {
  readonly handlers = new Map<string, (event: IpcEvent, ...args: unknown[]) => unknown>();

  handle(channel: string, handler: (event: IpcEvent, ...args: unknown[]) => unknown): void {
    if (this.handlers.has(channel))
      throw new Error(`Attempted to register a second handler for '${channel}'`);
    this.handlers.set(channel, handler);
  }
}

export const ipcMain = new IpcMain();

const schemes = new Map<string, (request: Request) => Response | Promise<Response>>();

export const protocol = {
  registerSchemesAsPrivileged(list: { scheme: string }[]): void {
    if (app.isReadyNow)
      throw new Error('protocol.registerSchemesAsPrivileged should be called before app is ready');
    facts.privilegedSchemes = list.map(({ scheme }) => scheme);
  },
  handle(scheme: string, handler: (request: Request) => Response | Promise<Response>): void {
    if (!app.isReadyNow) throw new Error('protocol.handle needs a session, which is there after ready');
    schemes.set(scheme, handler);
  },
};

let permissionRequest: (contents: WebContents, name: string, answer: (granted: boolean) => void) => void = (
  _,
  __,
  answer,
) => {
  answer(true);
};
let permissionCheck: (contents: WebContents, name: string) => boolean = () => true;

export const session = {
  get defaultSession() {
    if (!app.isReadyNow) throw new Error('Session can only be received when app is ready');
    return {
      setPermissionRequestHandler(handler: typeof permissionRequest) {
        permissionRequest = handler;
      },
      setPermissionCheckHandler(handler: typeof permissionCheck) {
        permissionCheck = handler;
      },
    };
  },
};

export const Menu = {
  buildFromTemplate: (template: object[]) => template,
  setApplicationMenu(menu: object[] | null): void {
    facts.menuIsSet = menu !== null;
  },
};

process.on('message', (message: ToProgram) => {
  if ('call' in message)
    void answer(message).then(
      (value) => tell({ type: 'answer', call: message.call, value }),
      (error: unknown) =>
        tell({
          type: 'failed',
          call: message.call,
          message: error instanceof Error ? error.message : String(error),
        }),
    );
  else if (message.type === 'say')
    ipcMain.emit(message.channel, eventOf(message.window, message.frame), ...message.args);
  else if (message.type === 'window-closed') windows.get(message.window)?.close();
  else app.emit('second-instance', {}, [], '', {});
});

async function answer(message: Extract<ToProgram, { call: number }>): Promise<unknown> {
  switch (message.type) {
    case 'invoke': {
      const handler = ipcMain.handlers.get(message.channel);
      if (handler === undefined) throw new Error(`No handler registered for '${message.channel}'`);
      const value = await handler(eventOf(message.window, message.frame), ...message.args);
      return structuredClone(value);
    }
    case 'fetch':
      return fetchFromProgram(message.url);
    case 'navigate': {
      const event = preventable();
      contentsOf(message.window).emit('will-navigate', event, message.url);
      return event.defaultPrevented ? 'prevented' : 'allowed';
    }
    case 'open-window':
      return contentsOf(message.window).openHandler({ url: message.url }).action;
    case 'permission': {
      const contents = contentsOf(message.window);
      const asked = await new Promise<boolean>((resolve) => {
        permissionRequest(contents, message.permission, resolve);
      });
      return { asked, checked: permissionCheck(contents, message.permission) };
    }
    case 'facts':
      return facts;
  }
}

async function fetchFromProgram(url: string): Promise<Fetched> {
  const scheme = new URL(url).protocol.slice(0, -1);
  const handler = schemes.get(scheme);
  if (handler === undefined || !facts.privilegedSchemes.includes(scheme))
    throw new Error(`net::ERR_UNKNOWN_URL_SCHEME ${url}`);
  const response = await handler(new Request(url));
  return {
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: new Uint8Array(await response.arrayBuffer()),
  };
}

function contentsOf(window: number): WebContents {
  const contents = windows.get(window)?.webContents;
  if (contents === undefined) throw new Error('Object has been destroyed');
  return contents;
}

function eventOf(window: number, frame: FrameFacts): IpcEvent {
  return {
    sender: contentsOf(window),
    senderFrame: { url: frame.url, parent: frame.isMain ? null : {} },
  };
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
