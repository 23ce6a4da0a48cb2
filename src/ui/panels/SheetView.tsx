/** The sheet as it will be handed over, in place of the plan. */
export function SheetView() {
  return <section aria-label="Sheet" className="sheet-view" />
}
