import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { memoryStore, type Saved, startAutosave } from '../../../src/files/autosave.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const of = (text: string) => () => ({ text, fileName: null });

function countingStore() {
  const store = memoryStore();
  const saved: string[] = [];
  return {
    saved,
    store: {
      ...store,
      save: (entry: Saved) => {
        saved.push(entry.text);
        return store.save(entry);
      },
    },
  };
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
  const autosave = startAutosave(store, { now: () => 42 });
  autosave.changed(of('a'));
  await autosave.flush();
  expect(await store.load()).toEqual({ text: 'a', fileName: null, savedAt: 42 });
});

test('when the page goes away the change is kept before the call returns', async () => {
  const store = memoryStore();
  const autosave = startAutosave(store);
  autosave.changed(of('a'));
  autosave.flushNow();
  expect((await store.load())?.text).toBe('a');
});

test('a write that is still under way when the page goes away is kept too', () => {
  const store = memoryStore();
  const last: string[] = [];
  const never = new Promise<void>(() => {});
  const saveNow = (entry: Saved) => last.push(entry.text) > 0;
  const autosave = startAutosave({ ...store, save: () => never, saveNow });
  autosave.changed(of('a'));
  void autosave.flush();
  autosave.flushNow();
  expect(last).toEqual(['a']);
});

test('what is kept already is not written again when the page goes away', async () => {
  const last: string[] = [];
  const saveNow = (entry: Saved) => last.push(entry.text) > 0;
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
  const save = (entry: Saved) => (full ? Promise.reject(new Error('full')) : store.save(entry));
  const autosave = startAutosave({ ...store, save }, { onError: (error) => errors.push(error) });
  autosave.changed(of('a'));
  await autosave.flush();
  full = false;
  autosave.changed(of('b'));
  await autosave.flush();
  expect([errors.map(String), saved]).toEqual([['Error: full'], ['b']]);
});
