-- One name for one thing, in what is kept as on the wire: `reason` for why, `mark` for a place on the dial, `is` and `has` for what
-- is so or not. In JSON a name with its colon cannot be part of a text, whose quotes are escaped.
ALTER TABLE lapses RENAME COLUMN because TO reason;
ALTER TABLE uses RENAME COLUMN without_loan_because TO without_loan_reason;
UPDATE bits SET
  hold = replace(hold, '"because":', '"reason":'),
  retirement = replace(retirement, '"because":', '"reason":');
UPDATE collets SET
  hold = replace(hold, '"because":', '"reason":');
UPDATE qualifications SET
  withdrawn = replace(withdrawn, '"because":', '"reason":');
UPDATE speed_trials SET
  set_aside = replace(set_aside, '"because":', '"reason":');
UPDATE approvals SET
  setting = replace(setting, '"dialMark":', '"mark":'),
  withdrawal = replace(withdrawal, '"because":', '"reason":'),
  requirements = replace(replace(requirements, '"demonstration":', '"isDemonstrationNeeded":'), '"parentalConsent":', '"isParentalConsentNeeded":');
UPDATE courses SET
  requirements = replace(replace(requirements, '"demonstration":', '"isDemonstrationNeeded":'), '"parentalConsent":', '"isParentalConsentNeeded":');
UPDATE lapses SET
  cause = replace(replace(cause, '"because":', '"reason":'), '"dialMark":', '"mark":'),
  before = replace(before, '"dialMark":', '"mark":'),
  after = replace(after, '"dialMark":', '"mark":');
UPDATE approval_grounds SET
  request = replace(replace(replace(replace(request, '"curved":', '"isCurved":'), '"backRout":', '"hasBackRout":'), '"stopped":', '"isStopped":'), '"sameRouter":', '"isSameRouter":'),
  results = replace(replace(results, '"dialMark":', '"mark":'), '"binds":', '"isBinding":');
UPDATE plans SET
  request = replace(replace(replace(replace(request, '"curved":', '"isCurved":'), '"backRout":', '"hasBackRout":'), '"stopped":', '"isStopped":'), '"sameRouter":', '"isSameRouter":'),
  plan = replace(replace(plan, '"dialMark":', '"mark":'), '"binds":', '"isBinding":');
UPDATE checks SET
  asked = replace(asked, '"dialMark":', '"mark":');
