import '@fontsource-variable/source-sans-3/wght.css';
import './ui/styles/tokens.css';
import './ui/styles/base.css';
import './ui/styles/layout.css';
import './ui/styles/controls.css';
import './ui/styles/parts.css';
import './ui/styles/worksheets.css';
import './ui/styles/catalogue.css';
import './ui/styles/coverage.css';
import './ui/styles/drafting.css';
import './ui/styles/overlays.css';
import './ui/styles/photos.css';
import './ui/styles/reading.css';
import './ui/styles/account.css';
import './ui/styles/lists.css';
import './ui/styles/clearance.css';
import { QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { isStatus } from './api/problems.ts';
import { App } from './app/App.tsx';
import { loadAhead } from './app/loadAhead.ts';
import { meKey } from './app/session.tsx';
import { StatusProvider } from './ui/Status.tsx';

const queryClient = new QueryClient({
  queryCache: new QueryCache({
    // A session that ended while the page was open leads to signing in, at the same address.
    onError: (error) => {
      if (isStatus(error, 401)) queryClient.setQueryData(meKey, null);
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: 10_000,
      // A refusal will be the same next time; a lost connection or a busy server may not.
      retry: (failures, error) => failures < 2 && (error instanceof TypeError || isStatus(error, 503)),
    },
  },
});

loadAhead(location.pathname);

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id root.');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <StatusProvider>
        <App />
      </StatusProvider>
    </QueryClientProvider>
  </StrictMode>,
);
