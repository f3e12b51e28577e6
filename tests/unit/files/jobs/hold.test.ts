import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createHold, type HoldReason, type HoldState } from '../../../../src/files/jobs/hold.ts';
import { leases } from '../../../../src/files/jobs/locks.ts';
import { memoryStorage, sharedChannel, sharedLocks } from '../../../support/kept-jobs.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function browser() {
  const locks = sharedLocks();
  const channel = sharedChannel();
  const tab = (name: string, flush: () => Promise<unknown> = async () => {}) => {
    const told: [HoldState, HoldReason][] = [];
    const hold = createHold({
      locks: locks.of(name),
      channel: channel.of(name),
      tab: name,
      flush,
      onState: (state, reason) => void told.push([state, reason]),
    });
    return { ...hold, told };
  };
  return { tab, kill: locks.kill, holder: locks.holder, silence: channel.silence };
}

test('the first tab has the job, the second looks on', async () => {
  const { tab } = browser();
  const [a, b] = [tab('a'), tab('b')];
  expect([await a.take('job'), await b.take('job')]).toEqual([true, false]);
  expect([a.state(), b.state()]).toEqual(['mine', 'elsewhere']);
});

test('two jobs do not stand in each other’s way', async () => {
  const { tab } = browser();
  const [a, b] = [tab('a'), tab('b')];
  expect([await a.take('one'), await b.take('other')]).toEqual([true, true]);
});

test('a tab that dies leaves the job to the one that looks on', async () => {
  const { tab, kill } = browser();
  const [a, b] = [tab('a'), tab('b')];
  await a.take('job');
  await b.take('job');
  kill('a');
  await vi.runAllTimersAsync();
  expect(b.told.at(-1)).toEqual(['mine', 'freed']);
});

test('a tab that goes to another job leaves the one before', async () => {
  const { tab } = browser();
  const [a, b] = [tab('a'), tab('b')];
  await a.take('job');
  await b.take('job');
  await a.take('another');
  await vi.runAllTimersAsync();
  expect([a.state(), b.state()]).toEqual(['mine', 'mine']);
});

test('a job is taken over once the other tab has written what it had', async () => {
  const { tab, holder } = browser();
  const order: string[] = [];
  const a = tab('a', async () => {
    order.push(`a writes while ${a.state()}`);
  });
  const b = tab('b');
  await a.take('job');
  await b.take('job');
  const over = b.takeOver().then(() => order.push('b has it'));
  await vi.runAllTimersAsync();
  await over;
  expect(order).toEqual(['a writes while yielding', 'b has it']);
  expect([a.state(), b.state(), holder('job')]).toEqual(['elsewhere', 'mine', 'b']);
  expect(a.told.at(-1)).toEqual(['elsewhere', 'yielded']);
});

test('a tab that does not answer loses the job after a while, and is told when it wakes', async () => {
  const { tab, silence } = browser();
  const [a, b] = [tab('a'), tab('b')];
  await a.take('job');
  await b.take('job');
  silence('a');
  const over = b.takeOver();
  await vi.advanceTimersByTimeAsync(1400);
  expect(b.state()).toBe('asking');
  await vi.advanceTimersByTimeAsync(200);
  await over;
  expect([a.state(), b.state()]).toEqual(['elsewhere', 'mine']);
  expect(a.told.at(-1)).toEqual(['elsewhere', 'seized']);
});

test('a job can be taken back', async () => {
  const { tab } = browser();
  const [a, b] = [tab('a'), tab('b')];
  await a.take('job');
  await b.take('job');
  for (const asker of [b, a, b]) {
    const over = asker.takeOver();
    await vi.runAllTimersAsync();
    await over;
  }
  expect([a.state(), b.state()]).toEqual(['elsewhere', 'mine']);
});

test('a job whose tab dies in the middle of being asked is had by the asker all the same', async () => {
  const { tab, kill } = browser();
  const never = new Promise<void>(() => {});
  const [a, b] = [tab('a', () => never), tab('b')];
  await a.take('job');
  await b.take('job');
  const over = b.takeOver();
  kill('a');
  await vi.runAllTimersAsync();
  await over;
  expect(b.state()).toBe('mine');
});

const lease = (storage: Storage, tab: string) => leases({ storage: () => storage, tab, stale: 5000 });

test('without locks of the browser, a lease in its storage is had by one tab', async () => {
  const storage = memoryStorage();
  const first = lease(storage, 'a').take('job');
  await vi.advanceTimersByTimeAsync(200);
  const second = lease(storage, 'b').take('job');
  await vi.advanceTimersByTimeAsync(200);
  expect([(await first) !== null, await second]).toEqual([true, null]);
  expect(await lease(storage, 'b').held()).toEqual(['job']);
});

test('of two tabs that ask for a lease in the same moment one has it', async () => {
  const storage = memoryStorage();
  const asked = [lease(storage, 'a').take('job'), lease(storage, 'b').take('job')];
  await vi.advanceTimersByTimeAsync(200);
  expect((await Promise.all(asked)).filter(Boolean)).toHaveLength(1);
});

test('a lease is renewed for as long as its tab lives, and free when it is released', async () => {
  const storage = memoryStorage();
  const asked = lease(storage, 'a').take('job');
  await vi.advanceTimersByTimeAsync(60_000);
  const waiting = lease(storage, 'b').wait('job', new AbortController().signal);
  await vi.advanceTimersByTimeAsync(3000);
  (await asked)?.release();
  await vi.advanceTimersByTimeAsync(3000);
  expect(await waiting).not.toBeNull();
});

test('a lease of a tab that died is free after a while', async () => {
  const storage = memoryStorage();
  storage.setItem('gentlebend.lock.job', JSON.stringify({ tab: 'dead', at: Date.now() }));
  const soon = lease(storage, 'b').take('job');
  await vi.advanceTimersByTimeAsync(200);
  expect(await soon).toBeNull();
  await vi.advanceTimersByTimeAsync(6000);
  const late = lease(storage, 'b').take('job');
  await vi.advanceTimersByTimeAsync(200);
  expect(await late).not.toBeNull();
});

test('a lease that is taken by force is lost to the tab that had it', async () => {
  const storage = memoryStorage();
  const asked = lease(storage, 'a').take('job');
  await vi.advanceTimersByTimeAsync(200);
  const lost = vi.fn();
  void (await asked)?.lost.then(lost);
  await lease(storage, 'b').seize('job');
  await vi.advanceTimersByTimeAsync(3000);
  expect(lost).toHaveBeenCalledOnce();
});
