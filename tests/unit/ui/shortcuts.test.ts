import { describe, expect, it } from 'vitest'
import { keyName, matchesKey, SHORTCUTS } from '#ui/shortcuts.ts'

const press = (key: string, modifiers: { ctrl?: boolean; meta?: boolean; shift?: boolean; alt?: boolean } = {}) => ({
  key,
  ctrlKey: modifiers.ctrl ?? false,
  metaKey: modifiers.meta ?? false,
  shiftKey: modifiers.shift ?? false,
  altKey: modifiers.alt ?? false,
})

describe('a key and the table', () => {
  it('Mod is Ctrl or Cmd, and Shift makes another key', () => {
    expect(matchesKey(press('z', { ctrl: true }), 'Mod+Z')).toBe(true)
    expect(matchesKey(press('z', { meta: true }), 'Mod+Z')).toBe(true)
    expect(matchesKey(press('Z', { ctrl: true, shift: true }), 'Mod+Z')).toBe(false)
    expect(matchesKey(press('Z', { ctrl: true, shift: true }), 'Mod+Shift+Z')).toBe(true)
    expect(matchesKey(press('z'), 'Mod+Z')).toBe(false)
  })

  it('signs count as they are typed, whatever Shift a keyboard needs for them', () => {
    expect(matchesKey(press('?', { shift: true }), '?')).toBe(true)
    expect(matchesKey(press('+', { shift: true }), '+')).toBe(true)
  })

  it('modifiers with a question mark may be held or not', () => {
    expect(matchesKey(press('ArrowLeft', { shift: true }), 'Shift?+Alt?+ArrowLeft')).toBe(true)
    expect(matchesKey(press('ArrowLeft'), 'Shift?+Alt?+ArrowLeft')).toBe(true)
    expect(matchesKey(press('ArrowLeft', { ctrl: true }), 'Shift?+Alt?+ArrowLeft')).toBe(false)
  })

  it('every key has a name to print, and no two in one place are the same', () => {
    for (const { keys } of SHORTCUTS) for (const key of keys) expect(keyName(key, false)).not.toBe('')
    const named = SHORTCUTS.flatMap(({ keys, place }) => keys.map((key) => `${place} ${key}`))
    expect(new Set(named).size).toBe(named.length)
    expect(keyName('Mod+Shift+Z', true)).toBe('Cmd Shift Z')
  })
})
