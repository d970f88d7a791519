using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.SettingUp;

/// <summary>What a person should know before frames are sawn and the chine is planked.</summary>
internal static class SettingUpFindings
{
    /// <summary>Less than this is no bevel to anybody, degrees.</summary>
    private const double SquareDegrees = 0.25;

    /// <summary>A chine fitted to the table's edge may be out by this, mm: what a rule shows.</summary>
    private const double FitMm = 0.5;

    public static Finding NoFrame(FramePlane frame) =>
        new(
            Severity.Note,
            frame.IsStation ? $"station {frame.Name}" : frame.Label,
            "no room for a frame: on the planking's inner face keel and chine meet or cross here; set up by the stem"
        );

    public static IEnumerable<Finding> Of(SettingUpGround ground, SettingUpPlan plan) =>
        Standing(ground, plan)
            .Concat(Bearding(ground, plan))
            .Concat(Corners(ground, plan))
            .Concat(Trims(ground, plan));

    /// <summary>Where the face asked for leaves wood wanting.</summary>
    private static IEnumerable<Finding> Standing(SettingUpGround ground, SettingUpPlan plan)
    {
        FrameSection[] standing =
        [
            .. plan.Sections.Where(s => s.Places.Any(p => p.BevelDegrees < -SquareDegrees)),
        ];
        if (standing.Length > 0)
        {
            double most = standing.Max(s => s.Places.Max(p => -p.FallMm));
            yield return new(
                Severity.Note,
                "setting up",
                $"standing bevels at {string.Join(", ", standing.Select(Named))}: wood is wanting outside the mould line, as much as {LengthText.ForPaper(most, ground.Job.Units, RoundTo.Up)} at the far face; saw them so much full"
            );
        }
    }

    private static string Named(FrameSection s) =>
        s.IsTransom ? "the transom"
        : s.IsStation ? $"station {s.Name}"
        : s.Label;

    private static IEnumerable<Finding> Bearding(SettingUpGround ground, SettingUpPlan plan)
    {
        RabbetPlace[] narrow = [.. plan.Rabbet.Where(r => r.Bearding is null)];
        if (ground.Backbone is not null && narrow.Length > 0)
        {
            yield return new(
                Severity.Note,
                "setting up",
                $"the backbone is no wider than the keel, or wider than the bottom, at {string.Join(", ", narrow.Select(r => r.Section))}: no bearding line there, and planks have no landing but the keel's side"
            );
        }
    }

    private static IEnumerable<Finding> Corners(SettingUpGround ground, SettingUpPlan plan)
    {
        if (ground.Topside is not null)
        {
            string[] without =
            [
                .. plan
                    .Sections.Select(s => s.Label)
                    .Where(n => plan.Chine.All(c => c.Section != n)),
            ];
            if (without.Length > 0)
            {
                yield return new(
                    Severity.Note,
                    "setting up",
                    $"the topside is not known at {string.Join(", ", without)}: its line has no values there, or it stands almost in the bottom's own plane; no corner is given there"
                );
            }
        }

        if (plan.Chine.FirstOrDefault(c => !c.Corner.PieceHolds) is { } thin)
        {
            ChineCorner c = thin.Corner;
            yield return new(
                Severity.Warning,
                $"chine, {thin.Section}",
                $"the chine piece is too small: the corner's inner edge lies {LengthText.ForPaper(c.Edge.Outer.X - c.Edge.Inner.X, ground.Job.Units)} in from its outer edge along the bottom; make width and up greater than the skins' own corner"
            );
        }

        if (plan.Chine.Length > 0)
        {
            ChinePlace most = plan.Chine.MaxBy(c => c.Corner.Rounded.OffMm)!;
            double skin = ground.Layers[^1].OuterMm - ground.Layers[^1].InnerMm;
            if (most.Corner.Rounded.OffMm > skin)
            {
                yield return new(
                    Severity.Warning,
                    $"chine, {most.Section}",
                    $"a radius of {LengthText.ForPaper(ground.Spec.ClothRadiusMm, ground.Job.Units)} takes {LengthText.ForPaper(most.Corner.Rounded.OffMm, ground.Job.Units)} off the corner, through the outer skin of {LengthText.ForPaper(skin, ground.Job.Units)}: fit a chine piece, or take a smaller radius and fill"
                );
            }
        }
    }

    /// <summary>What planks are left for at the chine against where the corner trims them.</summary>
    private static IEnumerable<Finding> Trims(SettingUpGround ground, SettingUpPlan plan)
    {
        EndRules ends = ground.Job.Ends;
        (ChinePlace Place, double Short)[] shorts =
        [
            .. plan
                .Chine.Select(c =>
                    (Place: c, Short: Short(ends.For(PanelEdge.Upper, c.PositionMm), c.Corner))
                )
                .Where(s => s.Short > FitMm),
        ];
        if (shorts.Length > 0)
        {
            (ChinePlace worst, double mm) = shorts.MaxBy(s => s.Short);
            yield return new(
                Severity.Warning,
                $"chine, {worst.Section}",
                $"planks are too short for this corner at {NumberText.Count(shorts.Length, "section")}, here by {LengthText.ForPaper(mm, ground.Job.Units, RoundTo.Up)}: they are to reach {LengthText.ForPaper(Math.Max(worst.Corner.Trim.OuterMm, worst.Corner.Trim.InnerMm), ground.Job.Units)} past the table's chine; raise [ends] chine by so much, or its allowance where it is fit, or mitre the skins where the corner opens forward (mitre-forward-of)"
            );
        }
    }

    private static double Short(EndRule rule, ChineCorner corner)
    {
        double most = Math.Max(corner.Trim.OuterMm, corner.Trim.InnerMm);
        return most - (rule.Cut == EndCut.LeftLong ? rule.ByMm : rule.AllowanceMm ?? 0);
    }
}
