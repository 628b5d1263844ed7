-- Two levels of sight. Staff touch the rows of their firms (policies own_firms, for garboard_app). Whoever is a party to
-- a firm's surveys works as garboard_person, which has all that garboard_app has and, by the policies below, the rows of
-- surveys in which app.person_id takes part. Staff who are party to nothing never pay for planning these.

-- CreateIndex
CREATE INDEX "parties_person_id_firm_id_idx" ON "parties"("person_id", "firm_id");

DO $$
BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'garboard_person') THEN
        CREATE ROLE garboard_person NOLOGIN;
    END IF;
EXCEPTION
    WHEN duplicate_object OR unique_violation THEN
        NULL;
    WHEN insufficient_privilege THEN
        RAISE EXCEPTION 'This account may not make the role garboard_person. Ask the server''s administrator to run: CREATE ROLE garboard_person NOLOGIN; GRANT garboard_app TO garboard_person; GRANT garboard_person TO %;', quote_ident(current_user);
END
$$;

DO $$
BEGIN
    GRANT garboard_app TO garboard_person;
    EXECUTE format('GRANT garboard_person TO %I', current_user);
EXCEPTION
    WHEN unique_violation THEN
        NULL;
    WHEN insufficient_privilege THEN
        IF NOT pg_has_role(current_user, 'garboard_person', 'MEMBER')
            OR NOT pg_has_role('garboard_person', 'garboard_app', 'USAGE') THEN
            RAISE EXCEPTION 'This account may not take on the role garboard_person. Ask the server''s administrator to run: GRANT garboard_app TO garboard_person; GRANT garboard_person TO %;', quote_ident(current_user);
        END IF;
END
$$;

-- What is withheld is told by a party's own row, so that policies need not look at the survey.
CREATE FUNCTION garboard_party_held() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
BEGIN
    -- Shared with others who add parties, but not with whoever is changing the survey at this moment.
    SELECT held INTO NEW.held FROM surveys WHERE id = NEW.survey_id FOR SHARE;
    RETURN NEW;
END
$$;
CREATE TRIGGER held BEFORE INSERT ON parties FOR EACH ROW EXECUTE FUNCTION garboard_party_held();

CREATE FUNCTION garboard_parties_held() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
BEGIN
    UPDATE parties SET held = NEW.held WHERE survey_id = NEW.id;
    RETURN NULL;
END
$$;
CREATE TRIGGER held AFTER UPDATE OF held ON surveys FOR EACH ROW
    WHEN (OLD.held IS DISTINCT FROM NEW.held) EXECUTE FUNCTION garboard_parties_held();

-- Yards that were invited before findings were assigned keep what they could see.
INSERT INTO finding_yards (firm_id, survey_id, finding_id, party_id, person_id)
SELECT p.firm_id, p.survey_id, f.id, p.id, p.person_id
FROM parties AS p JOIN findings AS f ON f.survey_id = p.survey_id AND f.state <> 'draft'
WHERE p.role = 'yard';

-- Views with the owner's rights: they bind the person by hand, and policies made of them need not apply the policies
-- of the tables below them. Only to be read.

-- The person's own parts in surveys; with an API key, those in its firm and its role alone (app.key is firm:role).
CREATE VIEW my_parties AS
    SELECT p.id, p.survey_id, p.firm_id, p.role, p.client, (p.released AND NOT p.held) AS sees
    FROM parties AS p
    WHERE p.person_id = nullif(current_setting('app.person_id', true), '')::uuid
        AND (nullif(current_setting('app.key', true), '') IS NULL
            OR current_setting('app.key', true) = p.firm_id::text || ':' || p.role);

-- Findings that the person, as a yard, was asked to put right.
CREATE VIEW my_yard_findings AS
    SELECT y.finding_id AS id
    FROM finding_yards AS y JOIN my_parties AS m ON m.id = y.party_id
    WHERE m.sees AND y.person_id = nullif(current_setting('app.person_id', true), '')::uuid;

-- Findings that were issued and released to the person.
CREATE VIEW my_findings AS
    SELECT f.id, f.survey_id
    FROM findings AS f
    WHERE f.state <> 'draft' AND (
        EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = f.survey_id AND m.sees AND m.role <> 'yard')
        OR EXISTS (SELECT FROM my_yard_findings AS y WHERE y.id = f.id)
    );

-- That there is evidence for these; itself it is for some roles only (policy of clearances).
CREATE VIEW my_clearances AS
    SELECT c.id FROM clearances AS c JOIN my_findings AS m ON m.id = c.finding_id;

-- That there is such a piece of equipment; what is known of it parties read in the report.
CREATE VIEW my_inventory AS
    SELECT i.id FROM inventory_items AS i JOIN my_parties AS m ON m.survey_id = i.survey_id;

CREATE VIEW my_vessels AS
    SELECT s.vessel_id AS id FROM surveys AS s JOIN my_parties AS m ON m.survey_id = s.id;

CREATE VIEW my_reports AS
    SELECT r.id FROM reports AS r
    WHERE r.state = 'issued' AND NOT r.preview AND EXISTS (
        SELECT FROM my_parties AS m WHERE m.survey_id = r.survey_id AND m.sees AND m.role <> 'yard'
    );

-- Photos of issued reports; and of a yard's findings, as they were issued.
CREATE VIEW my_photos AS
    SELECT rp.photo_id AS id FROM report_photos AS rp JOIN my_reports AS m ON m.id = rp.report_id;
CREATE VIEW my_yard_photos AS
    SELECT f.survey_id, (shown.photo ->> 'id')::uuid AS id
    FROM finding_yards AS y
    JOIN my_parties AS m ON m.id = y.party_id AND m.sees
    JOIN findings AS f ON f.id = y.finding_id AND f.state <> 'draft'
    CROSS JOIN LATERAL jsonb_array_elements(f.issued -> 'photos') AS shown (photo)
    WHERE y.person_id = nullif(current_setting('app.person_id', true), '')::uuid;

-- Pictures as documents show them. A yard may see those of its findings, never the document.
CREATE VIEW issued_pictures AS
    SELECT rp.photo_id, rp.report_id, r.kind, rp.thumb_hash, rp.screen_hash, rp.print_hash, rp.width, rp.height
    FROM report_photos AS rp JOIN reports AS r ON r.id = rp.report_id
    WHERE r.state = 'issued' AND (
        r.firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[])
        OR EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = r.survey_id AND m.sees)
    );

REVOKE ALL ON my_parties, my_findings, my_yard_findings, my_clearances, my_inventory, my_vessels, my_reports, my_photos,
    my_yard_photos, issued_pictures FROM garboard_app;
GRANT SELECT ON my_parties, my_findings, my_yard_findings, my_clearances, my_inventory, my_vessels, my_reports, my_photos,
    my_yard_photos, issued_pictures TO garboard_app;

-- For the tables to come: SELECT garboard_add_policies('table', level, writes).
--   staff     the firm alone (firm_id)
--   party     every party to the survey may read (survey_id)
--   released  parties to whom what was issued is released, but no yard (survey_id)
--   finding   whoever may see the finding (finding_id)
--   own       the person whose it is reads and writes (person_id)
-- writes: what parties may do besides reading to the rows that they may read, such as 'insert, update'.
CREATE FUNCTION garboard_add_policies(name regclass, level text, writes text DEFAULT '') RETURNS void
LANGUAGE plpgsql SET search_path = public, pg_temp
AS $$
DECLARE
    staff constant text :=
        'firm_id = ANY ((SELECT string_to_array(nullif(current_setting(''app.firm_ids'', true), ''''), '','')::uuid[])::uuid[])';
    party constant text := CASE level
        WHEN 'party' THEN format('EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = %s.survey_id)', name)
        WHEN 'released' THEN format(
            'EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = %s.survey_id AND m.sees AND m.role <> ''yard'')', name)
        WHEN 'finding' THEN format('EXISTS (SELECT FROM my_findings AS m WHERE m.id = %s.finding_id)', name)
        WHEN 'own' THEN 'person_id = nullif(current_setting(''app.person_id'', true), '''')::uuid'
    END;
    verb text;
BEGIN
    IF level NOT IN ('staff', 'party', 'released', 'finding', 'own') THEN
        RAISE EXCEPTION 'There is no level % of sight.', level;
    END IF;
    EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY own_firms ON %s TO garboard_app USING (%s) WITH CHECK (%s)', name, staff, staff);
    IF level = 'staff' THEN
        RETURN;
    END IF;
    IF level = 'own' THEN
        writes := 'insert, update, delete';
    END IF;
    EXECUTE format('CREATE POLICY party_select ON %s FOR SELECT TO garboard_person USING (%s)', name, party);
    FOREACH verb IN ARRAY string_to_array(replace(writes, ' ', ''), ',') LOOP
        EXECUTE format(
            CASE verb
                WHEN 'insert' THEN 'CREATE POLICY party_insert ON %1$s FOR INSERT TO garboard_person WITH CHECK (%2$s)'
                WHEN 'update' THEN 'CREATE POLICY party_update ON %1$s FOR UPDATE TO garboard_person USING (%2$s) WITH CHECK (%2$s)'
                WHEN 'delete' THEN 'CREATE POLICY party_delete ON %1$s FOR DELETE TO garboard_person USING (%2$s)'
            END, name, party);
    END LOOP;
END
$$;
REVOKE ALL ON FUNCTION garboard_add_policies(regclass, text, text) FROM PUBLIC;

-- What a party may never change of a row that it may change: names of columns as the trigger's arguments.
CREATE FUNCTION garboard_keep_columns() RETURNS trigger
LANGUAGE plpgsql SET search_path = public, pg_temp
AS $$
DECLARE
    kept text;
    before constant jsonb := to_jsonb(OLD);
    after constant jsonb := to_jsonb(NEW);
BEGIN
    IF OLD.firm_id::text = ANY (string_to_array(current_setting('app.firm_ids', true), ',')) THEN
        RETURN NEW;
    END IF;
    FOREACH kept IN ARRAY TG_ARGV LOOP
        IF before -> kept IS DISTINCT FROM after -> kept THEN
            RAISE insufficient_privilege USING MESSAGE = format('A party may not change %s of %s.', kept, TG_TABLE_NAME);
        END IF;
    END LOOP;
    RETURN NEW;
END
$$;

-- Surveys and what is known of them.
CREATE POLICY party_select ON surveys FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = surveys.id));
CREATE POLICY party_select ON vessels FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_vessels AS m WHERE m.id = vessels.id));
CREATE POLICY party_select ON firms FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.firm_id = firms.id));
CREATE POLICY party_select ON attendances FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = attendances.survey_id));

-- Parties: one's own; the client's survey's all; an owner those of the owner's side. Own rows are told apart first,
-- without a look into the view, because long lists join them.
CREATE POLICY party_select ON parties FOR SELECT TO garboard_person USING (
    (
        person_id = nullif(current_setting('app.person_id', true), '')::uuid
        AND (nullif(current_setting('app.key', true), '') IS NULL
            OR current_setting('app.key', true) = firm_id::text || ':' || role)
    )
    OR EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = parties.survey_id
            AND (m.client OR (m.role = 'owner' AND parties.role IN ('owner', 'yard')))
    )
);
-- Who pays invites yards, and an owner who has the report.
CREATE POLICY party_insert ON parties FOR INSERT TO garboard_person WITH CHECK (
    role = 'yard' AND NOT client AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = parties.survey_id AND m.firm_id = parties.firm_id
            AND (m.client OR (m.role = 'owner' AND m.sees))
    )
);
-- Who pays releases and withdraws.
CREATE POLICY party_update ON parties FOR UPDATE TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = parties.survey_id AND m.client))
    WITH CHECK (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = parties.survey_id AND m.client));
CREATE TRIGGER kept BEFORE UPDATE ON parties FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns('id', 'firm_id', 'survey_id', 'person_id', 'role', 'name', 'client', 'held');

-- Findings: what was issued; a party moves their state on and no word of them. Lists go over tens of thousands of these:
-- IN is worked out once a statement (half a millisecond for a person with 1 700 surveys), EXISTS once a row.
CREATE POLICY party_select ON findings FOR SELECT TO garboard_person USING (
    state <> 'draft' AND (
        survey_id IN (SELECT m.survey_id FROM my_parties AS m WHERE m.sees AND m.role <> 'yard')
        OR id IN (SELECT m.id FROM my_yard_findings AS m)
    )
);
CREATE POLICY party_update ON findings FOR UPDATE TO garboard_person
    USING (state <> 'draft' AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = findings.survey_id AND m.sees AND m.role IN ('owner', 'yard', 'insurer')
    ))
    WITH CHECK (state <> 'draft');
CREATE TRIGGER kept BEFORE UPDATE ON findings FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'number', 'system', 'title', 'observed', 'consequence', 'recommendation', 'urgency',
        'within_days', 'harms', 'references', 'position', 'cost_low', 'cost_high', 'cost_currency', 'cost_basis', 'cost_note',
        'issued', 'withdrawn_reason', 'withdrawn_at', 'withdrawn_by', 'clearing', 'created_at'
    );
CREATE POLICY party_select ON finding_photos FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_findings AS m WHERE m.id = finding_photos.finding_id));

-- Which yard puts which finding right: seen with the finding, said by who pays or by an owner who has the report.
CREATE POLICY party_select ON finding_yards FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_findings AS m WHERE m.id = finding_yards.finding_id));
CREATE POLICY party_insert ON finding_yards FOR INSERT TO garboard_person WITH CHECK (EXISTS (
    SELECT FROM my_parties AS m
    WHERE m.survey_id = finding_yards.survey_id AND m.firm_id = finding_yards.firm_id
        AND (m.client OR (m.role = 'owner' AND m.sees))
));
CREATE POLICY party_delete ON finding_yards FOR DELETE TO garboard_person USING (EXISTS (
    SELECT FROM my_parties AS m
    WHERE m.survey_id = finding_yards.survey_id AND (m.client OR (m.role = 'owner' AND m.sees))
));

-- Photos: those of issued reports; for a yard those that its findings were issued with.
CREATE POLICY party_select ON photos FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM my_photos AS m WHERE m.id = photos.id)
    OR EXISTS (SELECT FROM my_yard_photos AS m WHERE m.id = photos.id AND m.survey_id = photos.survey_id)
);
CREATE POLICY party_select ON reports FOR SELECT TO garboard_person USING (
    state = 'issued' AND NOT preview AND EXISTS (
        SELECT FROM my_parties AS m WHERE m.survey_id = reports.survey_id AND m.sees AND m.role <> 'yard'
    )
);
CREATE POLICY party_select ON report_photos FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_reports AS m WHERE m.id = report_photos.report_id));
CREATE POLICY party_select ON worksheets FOR SELECT TO garboard_person USING (
    issued IS NOT NULL AND (
        EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = worksheets.survey_id AND m.sees AND m.role <> 'yard')
        OR EXISTS (SELECT FROM my_findings AS m WHERE m.id = (worksheets.issued ->> 'findingId')::uuid)
    )
);

-- Evidence: for the roles of the permission table's evidence.read, sent by evidence.send, decided on by evidence.decide.
CREATE POLICY party_select ON clearances FOR SELECT TO garboard_person USING (
    EXISTS (SELECT FROM my_findings AS m WHERE m.id = clearances.finding_id)
    AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = clearances.survey_id AND m.sees AND m.role IN ('owner', 'yard', 'insurer', 'buyer')
    )
);
CREATE POLICY party_insert ON clearances FOR INSERT TO garboard_person WITH CHECK (
    EXISTS (
        SELECT FROM my_findings AS f JOIN my_parties AS m ON m.survey_id = f.survey_id
        WHERE f.id = clearances.finding_id AND f.survey_id = clearances.survey_id AND m.firm_id = clearances.firm_id
            AND m.sees AND m.role IN ('owner', 'yard')
    )
);
CREATE POLICY party_update ON clearances FOR UPDATE TO garboard_person
    USING (EXISTS (
        SELECT FROM my_parties AS m WHERE m.survey_id = clearances.survey_id AND m.sees AND m.role = 'insurer'
    ));
CREATE TRIGGER kept BEFORE UPDATE ON clearances FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'finding_id', 'statement', 'work_done_by', 'work_done_on',
        'sent_by_id', 'sent_by_name', 'sent_by_role', 'sent_at'
    );
CREATE POLICY party_select ON clearance_files FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM clearances AS c WHERE c.id = clearance_files.clearance_id));
CREATE POLICY party_insert ON clearance_files FOR INSERT TO garboard_person WITH CHECK (EXISTS (
    SELECT FROM clearances AS c
    WHERE c.id = clearance_files.clearance_id AND c.firm_id = clearance_files.firm_id
        AND c.sent_by_id = nullif(current_setting('app.person_id', true), '')::uuid
));

-- What happened: one's own acts; of a finding that one may see, what is told to all; for who pays, who was given the
-- report and who looked at it. Everybody's acts are written down.
CREATE POLICY party_select ON events FOR SELECT TO garboard_person USING (
    actor_id = nullif(current_setting('app.person_id', true), '')::uuid
    OR (
        finding_id IS NOT NULL AND kind NOT LIKE 'review.%'
        AND EXISTS (SELECT FROM my_findings AS m WHERE m.id = events.finding_id)
    )
    OR (
        (kind LIKE 'party.%' OR kind IN (
            'report.issued', 'report.viewed', 'report.shared', 'report.share-ended', 'report.opened-by-link'
        ))
        AND EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = events.survey_id AND m.client)
    )
);
CREATE POLICY party_insert ON events FOR INSERT TO garboard_person WITH CHECK (
    actor_id = nullif(current_setting('app.person_id', true), '')::uuid
    AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.firm_id = events.firm_id AND (events.survey_id IS NULL OR m.survey_id = events.survey_id)
    )
);
