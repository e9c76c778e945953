import { describe, expect, test } from 'vitest';
import { fitted, joined } from '../../src/text/fitted.ts';

describe('lists for records', () => {
  test('a list is copied, and an empty one cannot be added to', () => {
    const list = ['a', 'b'];
    expect(fitted(list)).toEqual(list);
    expect(fitted(list)).not.toBe(list);
    expect(() => fitted<string>([]).push('a')).toThrow(TypeError);
  });

  test('joined lists keep their order', () => {
    expect(joined(['a'], ['b', 'c'])).toEqual(['a', 'b', 'c']);
    expect(joined([], ['b'])).toEqual(['b']);
    expect(joined(['a'], [])).toEqual(['a']);
  });
});
