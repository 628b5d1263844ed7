-- What concerns the firm as a whole belongs to no survey.
ALTER TABLE "events" ALTER COLUMN "survey_id" DROP NOT NULL;
