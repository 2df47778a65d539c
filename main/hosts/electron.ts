import { app, BrowserWindow, ipcMain, Menu, protocol, session, type WebFrameMain } from 'electron';
import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtFile } from '../workers/built-file.ts';
import { readHostArguments } from './arguments.ts';
import { channels, windowOrigin, windowScheme } from './channels.ts';
import { makeKeeper, type Keeper } from './keeper.ts';
import { dataFolder, usualLibraryPath } from './library-place.ts';
import { loadWindowFiles, windowHeaders } from './window-files.ts';

// The program with a window of its own.

const { libraryPath, isDemo } = readHostArguments(process.argv);

// One lock a library (Electron keeps it in this folder): a second start on the same library brings the first
// window forward, while another library, or one more demo, gets a window of its own.
app.setPath('userData', join(dataFolder(), 'windows', lockName()));
protocol.registerSchemesAsPrivileged([
  { scheme: windowScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);

if (!app.requestSingleInstanceLock()) app.quit();
else start();

function start(): void {
  const keeper = makeKeeper({ libraryPath, isDemo, host: 'electron', door: null });
  let shown: BrowserWindow | null = null;

  app.on('second-instance', () => {
    if (shown === null) return;
    if (shown.isMinimized()) shown.restore();
    shown.focus();
  });
  app.on('web-contents-created', (_, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
    contents.on('will-navigate', (event) => {
      event.preventDefault();
    });
    contents.on('will-redirect', (event) => {
      event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => {
      event.preventDefault();
    });
  });
  app.on('window-all-closed', () => {
    app.quit();
  });
  endWith(keeper);
  serve(keeper, () => shown);

  // Not awaited at the top: that would keep Electron from ever becoming ready.
  void app.whenReady().then(() => {
    serveWindowFiles();
    denyPermissions();
    Menu.setApplicationMenu(makeMenu());
    shown = openMainWindow();
    shown.on('closed', () => {
      shown = null;
    });
  });
}

function lockName(): string {
  if (isDemo) return `demo-${String(process.pid)}`;
  const path = resolve(libraryPath ?? usualLibraryPath());
  return createHash('sha256').update(path).digest('hex').slice(0, 32);
}

/** The library is closed before the program ends, whichever way it is asked to. */
function endWith(keeper: Keeper): void {
  let isClosed = false;
  app.on('will-quit', (event) => {
    if (isClosed) return;
    event.preventDefault();
    void keeper.close().then(() => {
      isClosed = true;
      app.quit();
    });
  });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'disconnect'] as const)
    process.on(signal, () => {
      app.quit();
    });
}

/** Answer the window's requests, and nobody else's: a message counts only from a page of ours. */
function serve(keeper: Keeper, shown: () => BrowserWindow | null): void {
  ipcMain.handle(channels.request, (event, name: unknown, input: unknown, call: unknown) => {
    if (!isOurs(event.senderFrame)) throw new Error('Only the window of this program may ask here.');
    if (typeof name !== 'string' || typeof call !== 'string')
      throw new Error('A request has a name, an input and a call.');
    return keeper.request(name, input, call);
  });
  ipcMain.on(channels.cancel, (event, call: unknown) => {
    if (isOurs(event.senderFrame) && typeof call === 'string') keeper.cancel(call);
  });
  ipcMain.handle(channels.print, (event) => {
    if (!isOurs(event.senderFrame)) throw new Error('Only the window of this program may print.');
    event.sender.print();
  });
  keeper.listen((event) => {
    shown()?.webContents.send(channels.event, event);
  });
}

function isOurs(frame: WebFrameMain | null): boolean {
  return frame?.url.startsWith(`${windowOrigin}/`) === true && frame.parent === null;
}

function serveWindowFiles(): void {
  const windowFile = loadWindowFiles();
  protocol.handle(windowScheme, (request) => {
    const { origin, host, pathname } = new URL(request.url);
    const file = host === 'bundle' || origin === windowOrigin ? windowFile(pathname) : undefined;
    return file === undefined
      ? new Response(null, { status: 404 })
      : new Response(file.body, { headers: { ...windowHeaders, 'Content-Type': file.type } });
  });
}

function denyPermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_, __, answer) => {
    answer(false);
  });
  session.defaultSession.setPermissionCheckHandler(() => false);
}

function openMainWindow(): BrowserWindow {
  const window = new BrowserWindow({
    width: 1360,
    height: 900,
    minWidth: 640,
    minHeight: 480,
    title: 'Tarewing',
    // Shown when its page is drawn, so that no empty frame flashes.
    show: false,
    webPreferences: {
      preload: fileURLToPath(builtFile('../preload/preload.cjs')),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => {
    window.show();
  });
  void window.loadURL(`${windowOrigin}/index.html`);
  return window;
}

/** What the keys of the system need: without a menu copy and paste do nothing on a Mac. */
function makeMenu(): Menu {
  return Menu.buildFromTemplate([
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' as const }] : [{ role: 'fileMenu' as const }]),
    {
      label: 'Edit',
      // Undo belongs to the window: it takes back changes of the library, on every screen.
      submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
    },
    {
      label: 'View',
      submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'togglefullscreen' }],
    },
    { role: 'windowMenu' },
  ]);
}
