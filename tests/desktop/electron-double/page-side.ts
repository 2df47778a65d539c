/**
 * The part of the double that runs in the page, before everything else: the `electron` module as a sandboxed preload
 * sees it. Written as one function, because it is sent into the page as text.
 */
export function installPreloadSide(preload: string): void {
  type Listener = (event: object, ...args: unknown[]) => void;
  interface Door {
    electronDouble(message: object): Promise<unknown>;
    electronDoubleHear(channel: string, args: unknown[]): void;
    electronDoublePaths: Map<string, string>;
  }
  const door = window as unknown as Door;
  // Frames inside the page get no preload, as in Electron.
  if (window !== window.top) return;
  const listeners = new Map<string, Set<Listener>>();
  door.electronDoublePaths = new Map();
  door.electronDoubleHear = (channel, args) => {
    for (const listener of listeners.get(channel) ?? []) listener({}, ...args);
  };

  // Between the page and the preload objects are copied, while functions, promises and files cross as they are.
  const cross = (value: unknown): unknown => {
    if (typeof value === 'function')
      return (...args: unknown[]) => cross((value as (...a: unknown[]) => unknown)(...args.map(cross)));
    if (value instanceof Promise) return value.then(cross);
    if (Array.isArray(value)) return value.map(cross);
    if (typeof value !== 'object' || value === null || value instanceof File) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, cross(each)]));
  };

  const electron = {
    contextBridge: {
      exposeInMainWorld(key: string, api: object) {
        Object.defineProperty(window, key, { value: Object.freeze(cross(api)) });
      },
    },
    ipcRenderer: {
      invoke: async (channel: string, ...args: unknown[]) =>
        door.electronDouble({ type: 'invoke', channel, args: structuredClone(args) }),
      send(channel: string, ...args: unknown[]) {
        void door.electronDouble({ type: 'say', channel, args: structuredClone(args) });
      },
      on(channel: string, listener: Listener) {
        listeners.set(channel, (listeners.get(channel) ?? new Set()).add(listener));
      },
      removeListener(channel: string, listener: Listener) {
        listeners.get(channel)?.delete(listener);
      },
    },
    webUtils: {
      getPathForFile: (file: File) => door.electronDoublePaths.get(file.name) ?? '',
    },
  };
  const require = (name: string) => {
    if (name === 'electron') return electron;
    throw new Error(`module not found: ${name}`);
  };
  // What a sandboxed preload is: a CommonJS function with `require` for a few modules alone.
  new Function('require', 'module', 'exports', preload)(require, { exports: {} }, {});
}
