import { createStore } from 'zustand/vanilla'
import type { FurnitureKind, OpeningKind } from '#analysis/room.ts'
import type { AssemblyDraft, Building } from '#state/draft.ts'

/** What the pointer does on the plan: pick and move, draw an outline, put a new thing down, cut a room in two, calibrate a picture. */
export type Tool = 'select' | 'draw' | 'add' | 'cut' | 'calibrate'

/** What stands in, hangs over or lies under a room, and is not a surface. */
export type ThingKind =
  | 'opening'
  | 'obstacle'
  | 'drop'
  | 'height'
  | 'ceiling-part'
  | 'furniture'
  | 'box'
  | 'partition'
  | 'underlay'

export interface Thing {
  readonly kind: ThingKind
  readonly id: string
}

/** What the Add tool puts down at the next press. */
export type Adding =
  | { readonly kind: 'opening'; readonly opening: OpeningKind }
  | { readonly kind: 'furniture'; readonly furniture: FurnitureKind }
  | { readonly kind: 'obstacle' | 'drop' | 'height' | 'ceiling-part' | 'box' }

/** What the bench shows of the selected surfaces. */
export type BenchView = 'choose' | 'section' | 'curve' | 'inside' | 'build' | 'stands'

/** What the bench shows of the whole room. */
export type RoomView =
  | 'surfaces'
  | 'outline'
  | 'heights'
  | 'openings'
  | 'standing'
  | 'furniture'
  | 'corners'
  | 'rooms'
  | 'compare'
  | 'targets'
  | 'paths'
  | 'air'

/** What the page looks at: never saved, never undone. */
export interface ViewState {
  readonly roomId: string
  readonly schemeId: string
  /** Selected walls, ceiling or floor, by id; several while a key is held. */
  readonly surfaceIds: readonly string[]
  readonly cornerId: string | null
  /** The selected thing; surfaces and corners are let go while there is one. */
  readonly thing: Thing | null
  /** Set while the tool is add. */
  readonly adding: Adding | null
  readonly tool: Tool
  /** Assembly pointed at in the bench: previewed, not chosen. */
  readonly pointedAssembly: string | null
  /** What to do next, pointed at by the path it is for: previewed, not done. */
  readonly pointedStep: string | null
  readonly showsSheet: boolean
  readonly benchView: BenchView
  readonly roomView: RoomView
  /** The thing last picked in a table: while it is the selected one, the bench stays with the table. */
  readonly listedThing: Thing | null
  /** Which end of a wall moves when its length is typed. */
  readonly movingEnd: 'from' | 'to'
  /** The largest circle and the narrowest width stand on the plan. */
  readonly showsFit: boolean
  /** Shares of what a receiver hears stand on the plan, where they are known; null: where it has room for them. */
  readonly showsShares: boolean | null
  /** The assembly being built in the bench; it waits there whatever else is looked at. */
  readonly building: Building | null
  /** Asked for while another is not saved yet: begun once that is settled. */
  readonly wantedDraft: AssemblyDraft | null
  /** The receiver whose paths are shown; null: the one with the least margin. */
  readonly receiverId: string | null
}

export function createViewStore(first: Pick<ViewState, 'roomId' | 'schemeId'>) {
  return createStore<ViewState>(() => ({
    ...first,
    surfaceIds: [],
    cornerId: null,
    thing: null,
    adding: null,
    tool: 'select',
    pointedAssembly: null,
    pointedStep: null,
    showsSheet: false,
    benchView: 'choose',
    roomView: 'surfaces',
    listedThing: null,
    movingEnd: 'to',
    showsFit: false,
    showsShares: null,
    building: null,
    wantedDraft: null,
    receiverId: null,
  }))
}
