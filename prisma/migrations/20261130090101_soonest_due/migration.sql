-- Pages of what is still to be cleared, soonest due first, are read from an index in that order: as many rows as a page
-- has, however many there are. What has no day comes last, as in the lists.
CREATE INDEX "findings_soonest" ON "findings" ((coalesce(due_on, '9999-12-31'::date)), id)
    INCLUDE (survey_id, firm_id)
    WHERE clearing AND state IN ('open', 'evidence-sent', 'returned');
CREATE INDEX "findings_soonest_of_firm" ON "findings" (firm_id, (coalesce(due_on, '9999-12-31'::date)), id)
    INCLUDE (survey_id)
    WHERE clearing AND state IN ('open', 'evidence-sent', 'returned');

-- The same that a party may see by the policy of findings, bound to the person by hand as the other views are. The
-- policy's IN gathers all of a person's surveys first; here each row is looked up as it is met: a subquery that gives a
-- value can't be turned into a table of them. Cancelled surveys are left out, as the lists leave them out.
CREATE VIEW my_undecided AS
    SELECT f.id, f.survey_id, f.firm_id, f.number, f.issued_title, f.issued_system, f.issued_urgency, f.state, f.due_on,
        coalesce(f.due_on, '9999-12-31'::date) AS due
    FROM findings AS f
    WHERE f.clearing AND f.state IN ('open', 'evidence-sent', 'returned')
        AND coalesce(
            (SELECT true FROM my_parties AS m
             WHERE m.survey_id = f.survey_id AND m.sees AND m.role <> 'yard' LIMIT 1),
            (SELECT true FROM my_yard_findings AS y WHERE y.id = f.id LIMIT 1),
            false
        )
        AND coalesce((SELECT s.state <> 'cancelled' FROM surveys AS s WHERE s.id = f.survey_id), false);
REVOKE ALL ON my_undecided FROM garboard_app;
GRANT SELECT ON my_undecided TO garboard_app;
