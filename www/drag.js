// Things in a list that are dragged by their grip into another's place. Until one is dropped only the
// eye sees it move; then the session hears where, and moves it. Works by pointer: mouse, pen, touch.

const SLACK = 6; // px that a finger may stray in a tap

export function drags({ on, tell }) {
  let held; // the item, where it was taken, whether it moves, and what lies under it

  const end = () => {
    if (!held?.moves) return (held = undefined);
    const { item, onto } = held;
    held = undefined;
    item.style.translate = "";
    item.removeAttribute("data-held");
    item.parentElement.classList.remove("sorting");
    onto?.removeAttribute("data-onto");
    item.scrollIntoView({ block: "nearest" });
  };

  on("pointerdown", (event, target) => {
    const grip = target.closest("[data-grip]");
    if (!grip || event.button) return;
    grip.setPointerCapture(event.pointerId);
    held = { item: grip.closest("[data-drag]"), from: event.clientY };
  });
  on("pointermove", (event) => {
    if (!held) return;
    const { item } = held;
    const list = item.parentElement;
    if (!held.moves) {
      if (Math.abs(event.clientY - held.from) < SLACK) return;
      // The list shrinks to its names: what is held stays under the finger.
      const before = item.getBoundingClientRect().top;
      const strayed = () => item.getBoundingClientRect().top - before;
      list.classList.add("sorting");
      item.setAttribute("data-held", "");
      scrollBy(0, strayed());
      held.from += strayed();
      held.moves = true;
    }
    item.style.translate = `0 ${event.clientY - held.from}px`;
    const others = [...list.querySelectorAll(":scope > [data-drag]")].filter((other) => other !== item);
    const under = others.find((other) => {
      const { top, bottom } = other.getBoundingClientRect();
      return event.clientY >= top && event.clientY <= bottom;
    });
    held.onto?.removeAttribute("data-onto");
    held.onto = under;
    under?.setAttribute("data-onto", "");
  });
  on("pointerup", () => {
    const { item, onto } = held ?? {};
    end();
    if (onto) tell("drop", item.id, onto.id);
  });
  on("pointercancel", end);
}
