/** Targets of the room on the page. */
export function TargetsView() {
  return <div className="bench-view" />
}
