import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { Answer } from '../requests/run.ts';
import type { ServiceEvent } from '../workers/service.ts';
import { channels } from './channels.ts';

// The bridge of the Electron host: one function an ability, never the messenger itself.

const bridge = {
  async request(name: string, input: unknown, call: string): Promise<Answer> {
    try {
      return (await ipcRenderer.invoke(channels.request, name, input, call)) as Answer;
    } catch (error) {
      const words = error instanceof Error ? error.message : String(error);
      const sentence = `The input of ${name} cannot be sent (${words}). Nothing was changed.`;
      return { ok: false, problem: { code: 'input-refused', sentence, fields: [] } };
    }
  },
  cancel(call: string): void {
    ipcRenderer.send(channels.cancel, call);
  },
  listen(listener: (event: ServiceEvent) => void): () => void {
    const heard = (_: unknown, event: ServiceEvent) => {
      listener(event);
    };
    ipcRenderer.on(channels.event, heard);
    return () => {
      ipcRenderer.removeListener(channels.event, heard);
    };
  },
  pathOf: (file: File): Promise<string> => Promise.resolve(webUtils.getPathForFile(file)),
  print: (): Promise<void> => ipcRenderer.invoke(channels.print) as Promise<void>,
};

contextBridge.exposeInMainWorld('tarewing', bridge);
