-- What parties may see and do of the clearance loop. The firm's own policies came with the tables.

-- More time: read by those who read evidence, given by an insurer (that it decides is asked by the use case).
CREATE POLICY party_select ON due_extensions FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM my_findings AS m WHERE m.id = due_extensions.finding_id)
    AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = due_extensions.survey_id AND m.sees AND m.role IN ('owner', 'yard', 'insurer', 'buyer')
    )
);
CREATE POLICY party_insert ON due_extensions FOR INSERT TO garboard_person WITH CHECK (
    by_id = nullif(current_setting('app.person_id', true), '')::uuid AND EXISTS (
        SELECT FROM my_findings AS f JOIN my_parties AS m ON m.survey_id = f.survey_id
        WHERE f.id = due_extensions.finding_id AND f.survey_id = due_extensions.survey_id
            AND m.firm_id = due_extensions.firm_id AND m.sees AND m.role = 'insurer'
    )
);

-- Comments: one's own, and those meant for one's role; only one's own can be taken back.
CREATE POLICY party_select ON finding_comments FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM my_findings AS f WHERE f.id = finding_comments.finding_id)
    AND (
        by_id = nullif(current_setting('app.person_id', true), '')::uuid
        OR EXISTS (
            SELECT FROM my_parties AS m
            WHERE m.survey_id = finding_comments.survey_id AND m.sees AND m.role = ANY (finding_comments.visible_to)
        )
    )
);
CREATE POLICY party_insert ON finding_comments FOR INSERT TO garboard_person WITH CHECK (
    by_id = nullif(current_setting('app.person_id', true), '')::uuid AND EXISTS (
        SELECT FROM my_findings AS f JOIN my_parties AS m ON m.survey_id = f.survey_id
        WHERE f.id = finding_comments.finding_id AND f.survey_id = finding_comments.survey_id
            AND m.firm_id = finding_comments.firm_id AND m.sees
    )
);
CREATE POLICY party_update ON finding_comments FOR UPDATE TO garboard_person
    USING (by_id = nullif(current_setting('app.person_id', true), '')::uuid)
    WITH CHECK (by_id = nullif(current_setting('app.person_id', true), '')::uuid AND removed_at IS NOT NULL);
CREATE TRIGGER kept BEFORE UPDATE ON finding_comments FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'finding_id', 'visible_to', 'by_id', 'by_name', 'by_role', 'at'
    );

-- Visits: by what was seen of a finding whose evidence one may read.
CREATE POLICY party_select ON re_inspection_items FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM my_findings AS m WHERE m.id = re_inspection_items.finding_id)
    AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = re_inspection_items.survey_id AND m.sees AND m.role IN ('owner', 'yard', 'insurer', 'buyer')
    )
);
CREATE POLICY party_select ON re_inspections FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM re_inspection_items AS i WHERE i.re_inspection_id = re_inspections.id)
);

-- What the loop added to findings and evidence, and no party may change.
CREATE TRIGGER kept_clearing BEFORE UPDATE ON findings FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns('items', 'due_on_set', 'issued_revision');
CREATE TRIGGER kept_clearing BEFORE UPDATE ON clearances FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns('revision', 'worksheet', 'worksheet_inputs', 're_inspection_id');
