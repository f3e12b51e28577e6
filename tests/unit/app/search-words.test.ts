import { describe, expect, it } from 'vitest';
import { findCommands } from '../../../src/app/CommandBox.tsx';
import { commands } from '../../../src/app/commands.ts';
import { searchDistance } from '../../../src/app/search-words.ts';
import { createBoard } from '../../../src/app/store.ts';
import { exampleJob } from './kitchen.ts';

const first = (typed: string) => findCommands(typed, createBoard(exampleJob()).getState())[0]?.id;

describe('searching by words', () => {
  it('finds words in any order, by their beginnings', () => {
    expect(searchDistance('run whol', 'Select the whole run')).not.toBeNull();
  });

  it('forgives one wrong, missing, extra or exchanged letter', () => {
    for (const typed of ['mirrar', 'miror', 'mirrror', 'mirorr'])
      expect(searchDistance(typed, 'Mirror left and right'), typed).not.toBeNull();
  });

  it('refuses a text that lacks one of the words', () => {
    expect(searchDistance('mirror ceiling', 'Mirror left and right', 'flip reflect')).toBeNull();
  });

  it('puts a title before a word that only goes with it', () => {
    const title = searchDistance('copy', 'Copy', 'clipboard');
    const also = searchDistance('copy', 'Duplicate', 'copy again');
    expect(title).toBeLessThan(also ?? 0);
  });
});

describe('the command box', () => {
  it('lists every command but itself where nothing is typed', () => {
    const found = findCommands('', createBoard(exampleJob()).getState());
    expect(found.map(({ id }) => id).toSorted()).toEqual(
      commands.flatMap(({ id }) => (id === 'view.find' ? [] : [id])).toSorted(),
    );
  });

  it('finds every command by its own title', () => {
    const state = createBoard(exampleJob()).getState();
    for (const command of commands)
      if (command.id !== 'view.find')
        expect(findCommands(command.title(state), state).map(({ id }) => id)).toContain(command.id);
  });

  it('puts what can be done now before what cannot', () => {
    const state = createBoard(exampleJob()).getState();
    const enabled = findCommands('', state).map((command) => command.enabled(state));
    expect(enabled).toEqual(enabled.toSorted((a, b) => Number(b) - Number(a)));
  });

  it('finds by a word that people use for it', () => {
    expect(first('keys help')).toBe('view.shortcuts');
    expect(first('history')).toBe('edit.steps');
  });
});
