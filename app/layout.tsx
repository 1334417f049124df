import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { DrawingReady } from './chart/DrawingReady';
import { EngineProvider } from './engine/EngineProvider';
import { RowsReady } from './fleet/RowsReady';
import { EngineNotice } from './frame/EngineNotice';
import { Footer } from './frame/Footer';
import { Header } from './frame/Header';
import { TermNotes } from './frame/TermNotes';
import { NewerVersion } from './offline/NewerVersion';
import { DropAnywhere } from './records/DropAnywhere';
import { KeptNotice } from './workspace/KeptNotice';
import { KeptProvider } from './workspace/KeptProvider';
import './styles/tokens.css';
import './styles/base.css';
import './styles/tables.css';
import './styles/print.css';

export const metadata: Metadata = {
  title: { default: 'Fleet · Endfloat', template: '%s · Endfloat' },
  description:
    'Turbocharger overhaul readings in; wear rates, margins and dates out. Nothing leaves the machine.',
};

export const viewport: Viewport = { colorScheme: 'light dark' };

/** The frame of every page: title block, state of the data, content, cautions. */
export default function RootLayout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en-GB">
      <body>
        <a href="#content" className="skipLink">
          Skip to the content
        </a>
        <EngineProvider>
          <KeptProvider>
            <Header />
            <main id="content" tabIndex={-1}>
              <noscript>
                <p>Endfloat computes in the browser and needs JavaScript, which is switched off here.</p>
              </noscript>
              <NewerVersion />
              <EngineNotice />
              <KeptNotice />
              <DropAnywhere />
              {children}
            </main>
            <Footer />
            <TermNotes />
            <DrawingReady />
            <RowsReady />
          </KeptProvider>
        </EngineProvider>
      </body>
    </html>
  );
}
