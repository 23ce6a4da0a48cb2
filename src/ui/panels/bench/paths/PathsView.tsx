/** Paths of the room on the page. */
export function PathsView() {
  return <div className="bench-view" />
}
