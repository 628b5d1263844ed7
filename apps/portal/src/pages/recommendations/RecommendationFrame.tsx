import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import type { Answer } from '../../api/client.ts';
import { count } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';

const places = [
  ['/recommendations', 'By recommendation'],
  ['/recommendations/vessels', 'By vessel'],
] as const;

/** The frame of both lists over all surveys: one by one, and vessel by vessel. */
export function RecommendationFrame({
  counts,
  action,
  children,
}: {
  counts: Answer<'countRecommendations'> | undefined;
  action?: ReactNode;
  children: ReactNode;
}) {
  const [path] = useLocation();
  const here = places.find(([href]) => href === path)?.[1];
  return (
    <Page
      title="Recommendations"
      windowTitle={here === 'By vessel' ? 'Recommendations by vessel' : 'Recommendations'}
      under={counts ? coverOf(counts) : 'Findings that require clearing, over all surveys you may see'}
      above={
        <nav aria-label="Recommendations">
          <ul className="section-nav">
            {places.map(([href, label]) => (
              <li key={href}>
                <Link href={href} aria-current={href === path ? 'page' : undefined}>
                  {label}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
      }
      action={action}
    >
      {children}
    </Page>
  );
}

function coverOf({ vessels, firms, unreleased }: Answer<'countRecommendations'>): string {
  if (!vessels) return 'Findings that require clearing, over all surveys you may see';
  const by = firms.length === 1 ? firms[0]?.name : `${firms.length} firms`;
  const hidden = unreleased ? `; of ${count(unreleased, 'survey')} nothing has been released to you` : '';
  return `On ${count(vessels, 'vessel')} surveyed by ${by}${hidden}`;
}
