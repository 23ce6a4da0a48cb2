/** Air and leaks of the room on the page. */
export function AirView() {
  return <div className="bench-view" />
}
