-- The same rows with what is shown of their survey, boat and firm: whoever sees the recommendation sees these. The
-- policies of those tables would gather all surveys of a person first, for a page of fifty. Whether a row is seen is asked
-- before anything else of it, since most in the index are others'.
CREATE OR REPLACE VIEW my_undecided AS
    SELECT f.id, f.survey_id, f.firm_id, f.number, f.issued_title, f.issued_system, f.issued_urgency, f.state, f.due_on,
        coalesce(f.due_on, '9999-12-31'::date) AS due,
        s.number AS survey_number, s.clearance_decided_by AS decider, s.time_zone,
        v.id AS vessel_id, v.name AS vessel_name, firms.name AS firm_name
    FROM findings AS f
    JOIN surveys AS s ON s.id = f.survey_id AND s.state <> 'cancelled'
    JOIN vessels AS v ON v.id = s.vessel_id
    JOIN firms ON firms.id = f.firm_id
    WHERE f.clearing AND f.state IN ('open', 'evidence-sent', 'returned')
        AND coalesce(
            (SELECT true FROM my_parties AS m
             WHERE m.survey_id = f.survey_id AND m.sees AND m.role <> 'yard' LIMIT 1),
            (SELECT true FROM my_yard_findings AS y WHERE y.id = f.id LIMIT 1),
            false
        );
