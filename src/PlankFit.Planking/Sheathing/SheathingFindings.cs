using System.Collections.Immutable;
using PlankFit.Geometry.Cloth;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Sheathing;

/// <summary>What a person should know of cloth before it is cut.</summary>
internal static class SheathingFindings
{
    public static IEnumerable<Finding> Of(
        IReadOnlyList<SheathedLayer> layers,
        ImmutableArray<RollPlan> rolls,
        PlankingJob job
    )
    {
        foreach (SheathedLayer layer in layers)
        {
            foreach (Finding finding in Shears(layer, job.Units))
            {
                yield return finding;
            }

            if (Lap(layer, job) is { } lap)
            {
                yield return lap;
            }

            if (NearlyOne(layer, job.Units) is { } nearly)
            {
                yield return nearly;
            }

            if (Crossings(layer) is { } crossings)
            {
                yield return crossings;
            }
        }

        foreach (Finding together in LapsTogether.Of(layers, job.Units))
        {
            yield return together;
        }

        foreach (
            RollPlan plan in rolls.Where(r =>
                r.Cloth.Rolls.Any(o => o.WidthMm < r.RollWidthMm - 0.01)
            )
        )
        {
            yield return new(
                Severity.Note,
                About("cloth.roll"),
                $"courses of '{plan.Cloth.Name}' are planned for its widest roll, {Length(plan.RollWidthMm, job)}, and rolls narrower than that are not cut from: for those give a [[cloth]] of its own"
            );
        }

        foreach (RollPlan plan in rolls.Where(r => !r.Missing.IsEmpty))
        {
            double longest = plan.Cloth.Rolls.Max(r => r.LengthMm);
            string ids = string.Join(", ", plan.Missing.Select(p => p.Id));
            bool tooLong = plan.Missing.Any(p => p.LengthMm > longest);
            yield return new(
                Severity.Warning,
                About("cloth.roll"),
                tooLong
                    ? $"no roll of '{plan.Cloth.Name}' is long enough for {ids}: the longest has {Length(longest, job)}; give a longer roll, or courses = \"across\""
                    : $"the rolls of '{plan.Cloth.Name}' on hand do not suffice: {ids} have no place; give more of them, or a roll without count, which may be bought"
            );
        }
    }

    public static Finding CannotBeFollowed(SheathingSpec spec, string place) =>
        Faulty(
            spec,
            "first-along",
            $"its first line cannot be followed {place}: give another first-along"
        );

    public static Finding Stopped(SheathingSpec spec, ClothStop stop, string place) =>
        Faulty(
            spec,
            "first-along",
            stop.ShearDegrees is { } shear
                ? $"the cloth cannot be laid from this line: {place} it would be sheared by {Degrees(shear)}, and none follows so far; give another first-along, or cloth in courses there"
                : $"the cloth cannot be laid from this line: {place} its threads no longer meet; give another first-along"
        );

    public static Finding NotReached(SheathingSpec spec) =>
        Faulty(
            spec,
            "first-along",
            spec.FirstAlong is FirstLine.Best
                ? "from none of the first lines that were tried does the cloth come to all edges of the bottom: it is in no order and no plan. Give another first-along, such as a point"
                : "laid from this line the cloth does not come to all edges of the bottom: it is in no order and no plan. Give another first-along, such as \"best\""
        );

    public static Finding TooNarrow(SheathingSpec spec, ClothSpec cloth) =>
        Faulty(
            spec,
            "cloth",
            $"the roll of '{cloth.Name}' is far too narrow for a bottom divided so: look at its width and at join-lap"
        );

    private static IEnumerable<Finding> Shears(SheathedLayer layer, LengthUnit unit)
    {
        foreach (SheathedSide side in layer.Sides)
        {
            BayShear most = side.Bays.MaxBy(b => Math.Abs(b.Shear.Degrees))!;
            string where =
                    $"between stations {most.FromStation} and {most.ToStation}{Sided(layer, side)}",
                locks = NumberText.Trimmed(layer.Cloth.LocksAtDegrees, 1);
            switch (Drape.Verdict(most.Shear.Degrees, layer.Cloth))
            {
                case DrapeVerdict.TooMuch:
                    yield return Warning(
                        layer,
                        $"it is sheared by {Degrees(most.Shear.Degrees)} {where}, more than half of the {locks} degrees at which it locks: {string.Join(", ", Cures(most.Shear))}; {Darts(side)}"
                    );
                    break;
                case DrapeVerdict.PlanThePull:
                    yield return Note(
                        layer,
                        $"it is sheared by {Degrees(most.Shear.Degrees)} {where}: plan where it is pulled, and try it dry"
                    );
                    break;
                case DrapeVerdict.StrokeOut:
                    yield return Note(
                        layer,
                        $"it is sheared by {Degrees(most.Shear.Degrees)} {where}: stroke it out along its diagonals from the first line"
                    );
                    break;
            }

            BayShear hollow = side.Bays.MaxBy(b => b.Hollow)!;
            double lift = hollow.LiftMm(Drape.LiftOverMm);
            if (lift >= Drape.LeastLiftMm)
            {
                yield return Note(
                    layer,
                    $"a thread pulled tight between stations {hollow.FromStation} and {hollow.ToStation} would lift {LengthText.ForPaper(lift, unit)} over {LengthText.ForPaper(Drape.LiftOverMm, unit)}: do not pull along it there, stroke from the middle of the hollow"
                );
            }
        }
    }

    /// <summary>What takes off which part of it; nothing of a part that is told as 0.</summary>
    private static IEnumerable<string> Cures(ClothShear shear)
    {
        if (Told(shear.Turning))
        {
            yield return $"another first-along takes off the {Degrees(shear.Turning)} that come of its first line";
        }

        if (Told(shear.Bulge))
        {
            yield return $"a course of its own there takes off the {Degrees(shear.Bulge)} that come of the bottom's curvature";
        }
    }

    private static string Darts(SheathedSide side) =>
        side.Darts is { Darts: { IsEmpty: false } darts, LeftDegrees: var left }
            ? $"or {(darts.Length == 1 ? "one dart" : $"{NumberText.Trimmed(darts.Length, 0)} darts")} from the edge, drawn on the pieces, with which {Degrees(left)} are left"
            : "for a dart from the edge no place was found";

    /// <summary>What laps under the keel the keel carries twice.</summary>
    private static Finding? Lap(SheathedLayer layer, PlankingJob job)
    {
        if (layer.Spec.Keel is not ClothAtKeel.PastCentreLine { Mm: > 0 } past)
        {
            return null;
        }

        string width = LengthText.ForPaper(2 * past.Mm, job.Units),
            twice = LengthText.Fine(2 * layer.ThicknessMm, job.Units);
        bool planked = job
            .Layers.SkipWhile(l => l.Name != layer.Name)
            .Any(l => l is PlankLayerSpec);
        return Note(
            layer,
            !planked
                    ? $"port and starboard lap by {width} on the keel, {twice} thick there, outside all planks"
                : job.Keel.Layers.IsEmpty
                    ? $"port and starboard lap by {width} on the keel, {twice} thick there: the job names no keel layer, so plane the keel down by what laps, or the planks outside it will stand off"
                : $"port and starboard lap by {width} on the keel, {twice} thick there: keel layers outside it are planned with that, in their faces and half-widths"
        );
    }

    /// <summary>A second course that is all but lap is told: a little less all round does without it.</summary>
    private static Finding? NearlyOne(SheathedLayer layer, LengthUnit unit)
    {
        const double nearlyMm = 150;
        SheathedSide side = layer.Sides[0];
        double lacks = side.Cut.Max(p => p.Y) - side.Cut.Min(p => p.Y) - layer.Cloth.WidestMm;
        return side.Courses is { Along: true, JoinsMm.Length: 1 } && lacks is > 0 and < nearlyMm
            ? Note(
                layer,
                $"its roll is only {LengthText.ForPaper(lacks, unit, RoundTo.Up)} too narrow for one course: with so much less past the centre line, round the chine or in excess, or a wider roll, there is no join"
            )
            : null;
    }

    private static Finding? Crossings(SheathedLayer layer)
    {
        (string Edge, bool Crossed)[] edges =
        [
            ("the keel", layer.Spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 }),
            ("the chine", layer.Spec.RoundChineMm > 0),
            ("the transom", layer.Spec.RoundTransomMm > 0),
        ];
        string not = string.Join(", ", edges.Where(e => !e.Crossed).Select(e => e.Edge)),
            crossed = string.Join(", ", edges.Where(e => e.Crossed).Select(e => e.Edge));
        string how = layer.Cloth.Weave switch
        {
            Weave.Diagonal => "with threads both ways",
            Weave.Square => "with one of its two sets of threads",
            _ => layer.Cloth.Kind == ClothKind.Mat
                ? "with short threads"
                : "with some of its threads",
        };
        return not.Length == 0 ? null
            : crossed.Length == 0 ? Note(layer, $"no thread of it crosses {not}: it stops there")
            : Note(layer, $"it crosses {crossed} {how}, and stops at {not}");
    }

    private static string Sided(SheathedLayer layer, SheathedSide side) =>
        layer.Sides.Length == 1 ? ""
        : side.Holds[0] == Side.Starboard ? ", starboard"
        : ", port";

    /// <summary>It is not told as 0.</summary>
    private static bool Told(double degrees) => Math.Round(Math.Abs(degrees), 1) > 0;

    private static string Degrees(double degrees) =>
        NumberText.Trimmed(Math.Abs(degrees), 1) + " degrees";

    private static string Length(double mm, PlankingJob job) => LengthText.ForPaper(mm, job.Units);

    private static Subject About(string key) => Subject.Of("cloth") with { Key = key };

    private static Finding Note(SheathedLayer layer, string message) =>
        new(Severity.Note, Subject.OfLayer(layer.Name) with { Key = "sheathing.layer" }, message);

    private static Finding Warning(SheathedLayer layer, string message) =>
        new(
            Severity.Warning,
            Subject.OfLayer(layer.Name) with
            {
                Key = "sheathing.first-along",
            },
            message
        );

    private static Finding Faulty(SheathingSpec spec, string key, string message) =>
        new(
            Severity.Warning,
            Subject.OfLayer(spec.Layer) with
            {
                Key = $"sheathing.{key}",
            },
            message
        );
}
