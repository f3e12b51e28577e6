import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { startAutosave, type WorkStore } from '../../../src/files/autosave.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const of = (text: string) => () => text;

/** Keeps in memory, for as long as the test runs. */
function memoryStore(): WorkStore<string> & { kept: string | null } {
  const store = {
    kept: null as string | null,
    save: async (text: string) => {
      store.kept = text;
    },
    saveNow: (text: string) => {
      store.kept = text;
      return true;
    },
  };
  return store;
}

function countingStore() {
  const saved: string[] = [];
  const store: WorkStore<string> = {
    save: async (text) => {
      saved.push(text);
    },
    saveNow: () => true,
  };
  return { saved, store };
}

test('changes in quick succession are written once, the newest', async () => {
  const { store, saved } = countingStore();
  const autosave = startAutosave(store);
  autosave.changed(of('a'));
  await vi.advanceTimersByTimeAsync(200);
  autosave.changed(of('b'));
  await vi.advanceTimersByTimeAsync(299);
  expect(saved).toEqual([]);
  await vi.advanceTimersByTimeAsync(1);
  expect(saved).toEqual(['b']);
});

test('steady work is written all the same, at the latest after two seconds', async () => {
  const { store, saved } = countingStore();
  const autosave = startAutosave(store);
  for (let i = 0; i <= 20; i += 1) {
    autosave.changed(of(`${i}`));
    await vi.advanceTimersByTimeAsync(100);
  }
  expect(saved).toEqual(['19']);
});

test('a flush writes at once and settles when it is kept', async () => {
  const store = memoryStore();
  const autosave = startAutosave(store);
  autosave.changed(of('a'));
  await autosave.flush();
  expect([store.kept, autosave.outstanding()]).toEqual(['a', false]);
});

test('when the page goes away the change is kept before the call returns', async () => {
  const store = memoryStore();
  const autosave = startAutosave(store);
  autosave.changed(of('a'));
  autosave.flushNow();
  expect(store.kept).toBe('a');
});

test('a write that is still under way when the page goes away is kept too', () => {
  const store = memoryStore();
  const last: string[] = [];
  const never = new Promise<void>(() => {});
  const saveNow = (text: string) => last.push(text) > 0;
  const autosave = startAutosave({ ...store, save: () => never, saveNow });
  autosave.changed(of('a'));
  void autosave.flush();
  autosave.flushNow();
  expect(last).toEqual(['a']);
});

test('what is kept already is not written again when the page goes away', async () => {
  const last: string[] = [];
  const saveNow = (text: string) => last.push(text) > 0;
  const autosave = startAutosave({ ...memoryStore(), saveNow });
  autosave.changed(of('a'));
  await autosave.flush();
  autosave.flushNow();
  expect(last).toEqual([]);
});

test('when the last moment has no room the ordinary way is tried', async () => {
  const { store, saved } = countingStore();
  const autosave = startAutosave({ ...store, saveNow: () => false });
  autosave.changed(of('a'));
  autosave.flushNow();
  await vi.runAllTimersAsync();
  expect(saved).toEqual(['a']);
});

test('nothing is written when nothing changed', async () => {
  const { store, saved } = countingStore();
  const autosave = startAutosave(store);
  await autosave.flush();
  autosave.changed(of('a'));
  await autosave.flush();
  await autosave.flush();
  expect(saved).toEqual(['a']);
});

test('a write that fails is told, and the next change is written', async () => {
  const { store, saved } = countingStore();
  const errors: unknown[] = [];
  let full = true;
  const save = (text: string) => (full ? Promise.reject(new Error('full')) : store.save(text));
  const autosave = startAutosave({ ...store, save }, { onError: (error) => errors.push(error) });
  autosave.changed(of('a'));
  await autosave.flush();
  full = false;
  autosave.changed(of('b'));
  await autosave.flush();
  expect([errors.map(String), saved]).toEqual([['Error: full'], ['b']]);
});

test('what could not be written is held for the last moment at once, and written again after a while', async () => {
  const { store, saved } = countingStore();
  const last: string[] = [];
  let full = true;
  const save = (text: string) => (full ? Promise.reject(new Error('full')) : store.save(text));
  const saveNow = (text: string) => last.push(text) > 0;
  const autosave = startAutosave({ save, saveNow }, { again: 5000 });
  autosave.changed(of('a'));
  await autosave.flush();
  expect([last, autosave.outstanding()]).toEqual([['a'], true]);
  full = false;
  await vi.advanceTimersByTimeAsync(5000);
  expect([saved, autosave.outstanding()]).toEqual([['a'], false]);
});

test('a page is left without fear only where the last moment holds the work', () => {
  const held = startAutosave({ ...memoryStore(), saveNow: () => true });
  const lost = startAutosave({ ...memoryStore(), saveNow: () => false });
  expect([held.flushNow(), lost.flushNow()]).toEqual([true, true]);
  held.changed(of('a'));
  lost.changed(of('a'));
  expect([held.flushNow(), lost.flushNow()]).toEqual([true, false]);
});

test('what is dropped is written no more', async () => {
  const { store, saved } = countingStore();
  const autosave = startAutosave(store);
  autosave.changed(of('a'));
  autosave.drop();
  await vi.runAllTimersAsync();
  expect([saved, autosave.outstanding()]).toEqual([[], false]);
});
