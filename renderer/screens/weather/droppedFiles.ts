/** Folders in folders: so many files are taken, more was dropped by mistake. */
const mostFiles = 5000;

/**
 * The files of a drop, those inside dropped folders too; hidden ones are left out. Call it while the drop is handled:
 * afterwards the browser forgets what was dropped.
 */
export async function droppedFiles(transfer: DataTransfer | null): Promise<File[]> {
  if (transfer === null) return [];
  const entries = [...transfer.items]
    .map((item) => item.webkitGetAsEntry())
    .filter((entry) => entry !== null);
  // Without entries (a drop made by a script) there are no folders either.
  if (entries.length === 0) return [...transfer.files];
  const files: File[] = [];
  for (const entry of entries) await gather(entry, files);
  return files;
}

/** The files of a chosen folder, as the system's dialog gives them, without hidden ones. */
export function chosenFiles(list: FileList | null): File[] {
  return [...(list ?? [])].filter(({ name }) => !name.startsWith('.')).slice(0, mostFiles);
}

async function gather(entry: FileSystemEntry, files: File[]): Promise<void> {
  if (files.length >= mostFiles || entry.name.startsWith('.')) return;
  if (isFile(entry))
    files.push(
      await new Promise<File>((resolve, reject) => {
        entry.file(resolve, reject);
      }),
    );
  else if (isFolder(entry)) {
    const reader = entry.createReader();
    // A reader gives a hundred at a time, and none when it is done.
    for (;;) {
      const some = await new Promise<FileSystemEntry[]>((resolve, reject) => {
        reader.readEntries(resolve, reject);
      });
      if (some.length === 0) return;
      for (const each of some.toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true })))
        await gather(each, files);
    }
  }
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}
