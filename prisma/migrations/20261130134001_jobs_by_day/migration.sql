-- Jobs in the order of the day on which the next recommendation is due, read from the index alone: with the table in it,
-- the planner expects few rows of a firm, gathers all of them and sorts.
CREATE INDEX "findings_due_of_firm" ON "findings" (firm_id, due_on, survey_id, id)
    WHERE clearing AND state IN ('open', 'evidence-sent', 'returned') AND due_on IS NOT NULL;
