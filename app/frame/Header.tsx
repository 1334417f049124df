'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEngine } from '../engine/EngineProvider';
import { UnitSearch } from '../search/UnitSearch';
import { useUnitMarks } from '../units/useUnitMarks';
import { openedWords } from '../words/openedWords';
import { KeptBlock } from '../workspace/KeptBlock';
import styles from './frame.module.css';

const pages = [
  { href: '/', name: 'Fleet' },
  { href: '/unit/', name: 'Unit' },
  { href: '/sisters/', name: 'Sisters' },
  { href: '/drift/', name: 'Drift' },
  { href: '/spares/', name: 'Spares' },
  { href: '/report/', name: 'Report' },
  { href: '/bench/', name: 'Bench' },
  { href: '/records/', name: 'Records' },
  { href: '/tables/', name: 'Tables' },
  { href: '/methods/', name: 'Methods' },
];

/** The title block of the sheet: the tool's name, the pages, which data are open and as of when. */
export function Header() {
  const path = usePathname();
  const { state } = useEngine();
  const opened = openedWords(state);
  useUnitMarks();
  return (
    <header className={styles.header}>
      <p className={styles.name}>
        <Link href="/">Endfloat</Link>
      </p>
      <nav aria-label="Pages" className={styles.nav}>
        <ul>
          {pages.map((page) => (
            <li key={page.href}>
              <Link href={page.href} aria-current={path === page.href ? 'page' : undefined}>
                {page.name}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <UnitSearch />
      <dl className={styles.block}>
        <div>
          <dt>Data</dt>
          <dd>{opened.data}</dd>
        </div>
        <div>
          <dt>As of</dt>
          <dd>{opened.asOf}</dd>
        </div>
        <KeptBlock />
      </dl>
    </header>
  );
}
