/** Words a name may begin with that are no one's own name, so that it reads on as "the side door". @source our own choice */
const COMMON = new Set(
  [
    'side front back rear left right upper lower north south east west big small large old new main inner outer',
    'vehicle garage entrance entry stair stairs escape fire up-and-over sliding double single patio cellar loft attic',
    'door window vent hatch opening gap seals duct supply return extract exhaust inlet outlet grille silencer hole cable pipe',
    'bedroom living dining kitchen bathroom hall landing study nursery lounge office shop flat house room rooms garden yard',
    'street pavement terrace balcony neighbour neighbours neighbor neighbors child childs children childrens parents nearest',
    'laundry utility library playroom gym workshop next upstairs downstairs control cinema studio booth practice spare guest master point receiver boundary property',
  ].flatMap((line) => line.split(' ')),
)

/** Words that begin what already reads on within a sentence: "the gap round Wall 2", "what goes round Wall 2". */
const GOES_ON = new Set(['the', 'this', 'what'])

/**
 * A name within a sentence: "the side door", "the ceiling"; a name that may be somebody's own, or is numbered like
 * Wall 2, stays as it was written.
 */
export function named(name: string): string {
  const [first = ''] = name.split(/\s/)
  if (GOES_ON.has(first.toLowerCase())) return `${first.toLowerCase()}${name.slice(first.length)}`
  const word = first.toLowerCase().replace(/['’]s?$|s['’]$|,$/, '')
  if (!isCommon(word, first) || /\d\s*$/.test(name)) return name
  return `the ${first.charAt(0).toLowerCase()}${name.slice(1)}`
}

function isCommon(word: string, first: string): boolean {
  return word === 'ceiling' || word === 'floor' || COMMON.has(word) || COMMON.has(first.toLowerCase())
}

/** The same before its verb: "the bedroom window, not noticed, hears". */
export function beforeVerb(name: string): string {
  return name.includes(',') ? `${named(name)},` : named(name)
}

/** A name within a sentence, at its head. */
export function headed(name: string): string {
  const text = named(name)
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`
}

/** A few things in a row: "the walls, the ceiling and the floor". */
export function listed(things: readonly string[]): string {
  if (things.length < 2) return things.join('')
  return `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`
}
