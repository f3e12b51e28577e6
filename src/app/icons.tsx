import type { ReactNode } from 'react';

/** Plain geometry on a 20-unit square, drawn with the text's own colour. */
const drawings = {
  select: <path d="M5 3v12.5l3.4-3.2 2.2 4.7 2-.9-2.2-4.6H15z" />,
  draw: (
    <>
      <path d="M3 13h5a4 4 0 0 0 4-4V3" />
      <path d="M3 17h6a7 7 0 0 0 7-7V3" />
    </>
  ),
  hood: (
    <>
      <path d="M8 2.5h4v6l6 5v3H2v-3l6-5z" />
      <path d="M2 13.5h16" />
    </>
  ),
  cap: (
    <>
      <path d="M3 7h8v6H3" />
      <path d="M11 4v12l5-2V6z" />
    </>
  ),
  insert: (
    <>
      <path d="M2 10h5.5M12.5 10H18" />
      <circle cx="10" cy="10" r="2.5" />
    </>
  ),
  part: (
    <>
      <path d="M2 6.5h4M2 13.5h4M14 6.5h4M14 13.5h4" />
      <path d="M6 4.5h8v11H6z" />
      <path d="m8 10 4.5-3.5M8 10l4.5 3.5" />
    </>
  ),
  split: (
    <>
      <path d="M2 6.5h5M2 13.5h5M13 6.5h5M13 13.5h5" />
      <path d="M7 3.5 8 7l-2 3 2 3-1 3.5M13 3.5 14 7l-2 3 2 3-1 3.5" />
    </>
  ),
  join: (
    <>
      <path d="M2 6.5h5v7H2M18 6.5h-5v7h5" />
      <path d="M7 10h6" strokeDasharray="2 2" />
    </>
  ),
  block: (
    <>
      <path d="M3.5 3.5h13v13h-13z" />
      <path d="m3.5 11 7.5-7.5M3.5 16.5l13-13M9 16.5l7.5-7.5" />
    </>
  ),
  exit: (
    <>
      <path d="M13 2.5h4v15h-4z" />
      <path d="M2.5 10H10M7 7l3 3-3 3" />
    </>
  ),
  dimension: (
    <>
      <path d="M3.5 4v12M16.5 4v12M3.5 10h13" />
      <path d="m2 11.5 3-3M15 11.5l3-3" />
    </>
  ),
  pin: <path d="M3 3.5h14v9H9l-4 4v-4H3zM6 6.7h8M6 9.5h5" />,
  measure: <path d="M2.5 13.5 13.5 2.5l4 4-11 11zM5.5 10.5l2 2M8.3 7.7l1.4 1.4M11 5l2 2" />,
  pan: (
    <path d="M10 2v16M2 10h16M7.5 4.5 10 2l2.5 2.5M7.5 15.5 10 18l2.5-2.5M4.5 7.5 2 10l2.5 2.5M15.5 7.5 18 10l-2.5 2.5" />
  ),
  undo: <path d="M7 4 3 8l4 4M3 8h8.5a4.5 4.5 0 0 1 0 9H8" />,
  redo: <path d="m13 4 4 4-4 4M17 8H8.5a4.5 4.5 0 0 0 0 9H12" />,
  file: <path d="M5 2.5h6.5l4 4V17.5H5zM11.5 2.5v4h4" />,
  search: (
    <>
      <circle cx="8.5" cy="8.5" r="5" />
      <path d="m12.5 12.5 4.5 4.5" />
    </>
  ),
  sun: (
    <>
      <circle cx="10" cy="10" r="3.5" />
      <path d="M10 2v2M10 16v2M2 10h2M16 10h2M4.3 4.3l1.4 1.4M14.3 14.3l1.4 1.4M4.3 15.7l1.4-1.4M14.3 5.7l1.4-1.4" />
    </>
  ),
  moon: <path d="M15.5 12.5A6.5 6.5 0 0 1 7.5 4.5a6.5 6.5 0 1 0 8 8z" />,
  more: (
    <>
      <circle cx="4.5" cy="10" r="0.8" />
      <circle cx="10" cy="10" r="0.8" />
      <circle cx="15.5" cy="10" r="0.8" />
    </>
  ),
  down: <path d="m6 8 4 4 4-4" />,
  add: <path d="M10 4v12M4 10h12" />,
  remove: <path d="M4 6h12M8 6V3.5h4V6M6 6l.7 10.5h6.6L14 6" />,
  fit: <path d="M3 7V3h4M13 3h4v4M17 13v4h-4M7 17H3v-4" />,
  caution: <path d="M10 3 18 16.5H2zM10 8v4M10 14v.5" />,
  danger: <path d="M7 2.5h6L17.5 7v6L13 17.5H7L2.5 13V7zM10 6v5M10 13.5v.5" />,
  note: (
    <>
      <circle cx="10" cy="10" r="7" />
      <path d="M10 9v5M10 6v.5" />
    </>
  ),
  underlay: (
    <>
      <path d="M3 4h14v12H3zM3 13l4-4 4 4 2.5-2.5L17 14" />
      <circle cx="12.5" cy="7.5" r="1.2" />
    </>
  ),
  compare: <path d="M3 3.5h5.5v13H3zM11.5 3.5H17v13h-5.5zM4.8 7h2M4.8 10h2M13.3 7h2M13.3 10h2" />,
  settings: (
    <>
      <path d="M3 5.5h6M13 5.5h4M3 14.5h3M10 14.5h7M3 10h9M16 10h1" />
      <circle cx="11" cy="5.5" r="2" />
      <circle cx="14" cy="10" r="2" />
      <circle cx="8" cy="14.5" r="2" />
    </>
  ),
  tick: <path d="m4 10.5 4 4 8-9" />,
  close: <path d="m5 5 10 10M15 5 5 15" />,
} satisfies Record<string, ReactNode>;

export type IconName = keyof typeof drawings;

/** A picture beside a control that has its own name; hidden from screen readers. */
export function Icon({ name, size = 20 }: { name: IconName; size?: number }) {
  return (
    <svg
      className="icon"
      width={size}
      height={size}
      viewBox="0 0 20 20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.5"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {drawings[name]}
    </svg>
  );
}
