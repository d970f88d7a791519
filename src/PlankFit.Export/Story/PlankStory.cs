using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Joints;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Story;

/// <summary>One step of how a plank came to be: a heading, and lines with the numbers.</summary>
public sealed record StoryStep(string Heading, ImmutableArray<string> Lines);

/// <summary>
/// How one plank came to be, step by step, from the offsets that bear on it to its shape to saw: a builder's reason to trust it, and an engineer's way
/// through the code (each step names the part of the program that takes it).
/// </summary>
public static class PlankStory
{
    public static ImmutableArray<StoryStep> Of(
        BottomPlan plan,
        PlankLayerPlan layer,
        Plank plank
    ) =>
        [
            OffsetsStep.Of(plan, plank),
            StackStep(plan, layer),
            SurfaceStep(plan, layer, plank),
            SeamsStep(plan, layer, plank),
            FlatStep(plan.Job.Units, layer, plank),
            EndsStep(plan, layer, plank),
            SawStep(plan.Job.Units, layer, plank),
            .. PiecesStep(plan, plank),
            BendStep(plan.Job, layer, plank),
        ];

    private static StoryStep StackStep(BottomPlan plan, PlankLayerPlan layer)
    {
        LengthUnit unit = plan.Job.Units;
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(
            $"The table is to the {(plan.Job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? "outside" : "inside")} of the whole stack, which from the inside out is:"
        );
        foreach (LayerPlan l in plan.Layers)
        {
            string here = ReferenceEquals(l, layer) ? "   <- this plank's layer" : "";
            lines.Add($"  {l.Spec.Name}, {LengthText.FormatExact(l.Spec.ThicknessMm, unit)}{here}");
        }

        string side = layer.NeutralOffsetMm < 0 ? "inside" : "outside";
        lines.Add(
            $"So the middle of its thickness lies {LengthText.FormatExact(Math.Abs(layer.NeutralOffsetMm), unit)} {side} the table's surface, square to it; a bent plank keeps its length there."
        );
        return new(
            "The layer's own surface (Geometry/Surfaces/ParallelSurface)",
            lines.ToImmutable()
        );
    }

    private static StoryStep SurfaceStep(BottomPlan plan, PlankLayerPlan layer, Plank plank)
    {
        LengthUnit unit = plan.Job.Units;
        Vec3 middle = Middle(plank);
        if (
            !ClosestPoint.TryFind(
                layer.Surface,
                Starboard(plank, middle),
                Guess(plan, middle),
                1e-6,
                out ClosestPoint.Result foot
            )
        )
        {
            return new(
                "The surface under its middle",
                ["No foot was found under the plank's middle."]
            );
        }

        SurfacePoint p = foot.Foot;
        (double k1, double k2) = p.PrincipalCurvatures;
        double slope = Math.Atan2(p.Normal.Y, -p.Normal.Z) * 180 / Math.PI;
        return new(
            "The surface under its middle (Geometry/Surfaces/LoftedSurface)",
            [
                $"At x = {LengthText.FormatExact(p.P.X, unit)}, y = {LengthText.FormatExact(p.P.Y, unit)}, z = {LengthText.FormatExact(p.P.Z, unit)} (aft, outboard, up).",
                $"The {layer.Panel.Name} slopes {Num(slope, 1)}° up going outboard there; its radii of curvature are {Radius(k1, unit)} and {Radius(k2, unit)}.",
                $"Gauss curvature K = {p.GaussCurvature.ToString("0.00e+0", CultureInfo.InvariantCulture)} /mm²: {CurvatureWord(p.GaussCurvature)}",
            ]
        );
    }

    private static StoryStep SeamsStep(BottomPlan plan, PlankLayerPlan layer, Plank plank)
    {
        LengthUnit unit = plan.Job.Units;
        PlankLayerSpec spec = layer.Planks;
        string lower = layer.Panel.WordOf(PanelEdge.Lower);
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        double master = spec.MasterMm ?? double.NaN;
        string where = double.IsNaN(master)
            ? $"halfway along the {layer.Panel.Name}"
            : $"x = {LengthText.FormatExact(master, unit)}";
        lines.Add(
            $"The master plank is number {layer.MasterNumber}: its centre line crosses mid-{layer.Panel.Name} at {where}{Shifted(layer, unit)} and meets the {lower} at {Num(spec.AngleDegrees, 1)}°, heading {PlankWords.Of(spec.Heads)}."
        );
        int away = plank.Number - layer.MasterNumber;
        lines.Add(
            away == 0
                ? "This is the master plank."
                : $"This plank is {Math.Abs(away)} {(away > 0 ? "abaft" : "forward of")} it ({PlankWords.Of(plank.Kind)})."
        );
        lines.Add(
            spec.Hold == Hold.Width
                ? $"Each next seam is the geodesic that keeps the width most nearly {LengthText.FormatExact(spec.WidthMm, unit)} and nowhere above it."
                : $"Each next seam leaves the {lower} at {Num(spec.AngleDegrees, 1)}° and is nowhere more than {LengthText.FormatExact(spec.WidthMm, unit)} from the last."
        );
        Seam("Forward seam", plank.ForwardEdge);
        Seam("After seam", plank.AfterEdge);
        lines.Add(
            $"Between them it is {LengthText.FormatExact(plank.WidestMm, unit)} at its widest and {LengthText.FormatExact(plank.NarrowestMm, unit)} at its narrowest."
        );
        if (plank.KeelAngleDegrees is { } angle)
        {
            lines.Add(
                $"Its centre line, midway between the seams, meets the {lower} at {Num(angle, 2)}°."
            );
        }

        return new("Its seams (Planking/Planks/Seams)", lines.ToImmutable());

        void Seam(string name, PlankEdge edge)
        {
            lines.Add(
                edge.Exists
                    ? $"{name}: {LengthText.FormatExact(edge.SeamLengthMm, unit)} long on the surface, from {At(edge.Seam[0], unit)} to {At(edge.Seam[^1], unit)}{(edge.Neighbour is null ? "" : $"; shared with {edge.Neighbour}")}."
                    : $"{name}: none; this is a corner piece."
            );
        }
    }

    private static StoryStep FlatStep(LengthUnit unit, PlankLayerPlan layer, Plank plank) =>
        new(
            "Laid flat (Geometry/Strips: strip coordinates about its centre line)",
            [
                $"Every point keeps its distance along and square to the plank's centre line; lengths are shared between middle and edges by the factor 1 - K w²/24.",
                $"What the wood must take up as strain: {Num(plank.Bend.EdgeStrainPercent, 4)} % at the edges, {Most(plank.StrainMm, unit)} over the plank's length.",
                $"Forward edge {PlankWords.Edge(plank.ForwardEdge, unit)}, after edge {PlankWords.Edge(plank.AfterEdge, unit)} (from the chord: {OffChord(plank.ForwardEdge, unit)}; {OffChord(plank.AfterEdge, unit)}).",
                $"Straight edges would open by {Most(plank.WidestGapMm, unit)} and overlap by {Most(plank.WidestOverlapMm, unit)}; the layer's gap is {LengthText.Gap(layer.Planks.GapMm, unit)}: {(plank.StraightEdges ? "straight edges serve" : "shape the edges to the pattern")}.",
                $"Net length along its centre line {LengthText.FormatExact(plank.NetLengthMm, unit)}; net area {PlanWords.Area(plank.AreaMm2, unit)}.",
            ]
        );

    private static StoryStep EndsStep(BottomPlan plan, PlankLayerPlan layer, Plank plank)
    {
        LengthUnit unit = plan.Job.Units;
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        foreach (PlankEnd end in plank.Ends)
        {
            lines.Add(EndWords.Sentence(plank, end, layer.Planks.ThicknessMm, unit) + ".");
            lines.Add(
                $"  the cut stands at {Num(end.CutDegrees, 2)}° from the plank's line; {StorySides.Of(plan.Job, layer, end)}, so the bevel is {Num(end.BevelDegrees, 2)}° ({Num(end.BevelAtLeastN, 2)}° and {Num(end.BevelAtGreatestN, 2)}° at the corners)."
            );
        }

        if (plank.FitBothEnds)
        {
            lines.Add(PlankWords.DropIn(plank, unit));
        }

        return new("Its ends (Planking/Planks/Building/EndPiece)", lines.ToImmutable());
    }

    private static StoryStep SawStep(LengthUnit unit, PlankLayerPlan layer, Plank plank)
    {
        double across = plank.FlatCut.Max(p => p.Y) - plank.FlatCut.Min(p => p.Y);
        return new(
            "The shape to saw (Planking/Planks/Building/CutOutline)",
            [
                $"The edges run straight on past the net ends to the cuts; {plank.FlatCut.Length} corners enclose both faces, what is left long and the allowances.",
                $"Overall {LengthText.FormatExact(plank.CutLengthMm, unit)} along the board and {LengthText.FormatExact(across, unit)} across; the stock is {LengthText.FormatExact(layer.Planks.WidthMm, unit)} wide.",
            ]
        );
    }

    /// <summary>Of a plank that is longer than the stock.</summary>
    private static IEnumerable<StoryStep> PiecesStep(BottomPlan plan, Plank plank)
    {
        ImmutableArray<string> told = [.. JointWords.Sentences(plan, plank)];
        return told.IsEmpty
            ? []
            : [new("Its pieces, lettered from inboard (Planking/Joints/JointPlanner)", told)];
    }

    private static StoryStep BendStep(Job job, PlankLayerPlan layer, Plank plank)
    {
        double thickness = layer.Planks.ThicknessMm;
        double ratio = (plank.Bend.LeastRadiusMm ?? double.PositiveInfinity) / thickness;
        var judge = BendJudge.Of(job.Planking, layer.Planks);
        double strain = plank.Bend.GrainStrainPercent;
        BendLimit row = judge.Row(ratio, strain / 100);
        string wood = judge.Index(strain / 100) is { } index
            ? $" The wood: {Num(strain, 3)} % along the grain in all, {PlankWords.StrainUsed(index)} of what a cold bend is trusted with ({judge.Basis})."
            : "";
        return new(
            "How hard it is bent (Planking/Planks/Building/BendCheck)",
            [
                plank.Bend.LeastRadiusMm is { } r
                    ? $"Least radius {PlankWords.Radius(r, job.Units)}, {LengthText.From(plank.Bend.WorstAtMm, job.Units, $"its {Panel.InnerWordOf(plank.Id)} end")}: R/t = {Num(ratio, 0)}, fibre strain t/2R = {Num(plank.Bend.StrainPercent, 3)} %."
                    : "It lies flat: no radius below a kilometre.",
                $"Twist {PlankWords.Twist(plank.Bend.TwistDegreesPerMetre, job.Units)}.",
                $"Verdict: {plank.Bend.Verdict} (row R/t >= {Num(row.LeastRadiusOverThickness, 0)}; {row.Source}).{wood}",
                "An estimate from nominal clear wood, not a strength approval: knots, grain and moisture govern; follow the local code and qualified advice.",
            ]
        );
    }

    private static string Shifted(PlankLayerPlan layer, LengthUnit unit) =>
        Math.Abs(layer.MasterShiftMm) < 1e-9
            ? ""
            : $", moved {LengthText.FormatExact(Math.Abs(layer.MasterShiftMm), unit)} {(layer.MasterShiftMm > 0 ? "aft" : "forward")}";

    private static Vec3 Middle(Plank plank)
    {
        Vec3 sum = Vec3.Zero;
        foreach (Vec3 p in plank.Outline)
        {
            sum += p;
        }

        return sum / plank.Outline.Length;
    }

    private static Vec3 Starboard(Plank plank, Vec3 p) =>
        plank.Side == Side.Port ? p.MirroredInY() : p;

    private static Uv Guess(BottomPlan plan, Vec3 p)
    {
        StationOnHull a = plan.Hull.Stations.MinBy(s => Math.Abs(s.PositionMm - p.X))!;
        return new(a.U, plan.Hull.Surface.UpperV(Math.Max(a.U, plan.Hull.Surface.UFrom + 1)) / 2);
    }

    private static string At(Vec3 p, LengthUnit unit) =>
        $"({LengthText.FormatExact(p.X, unit)}, {LengthText.FormatExact(p.Y, unit)}, {LengthText.FormatExact(p.Z, unit)})";

    /// <summary>What turns by less than a millionth a millimetre, a radius of a kilometre, is straight to anybody.</summary>
    private static string Radius(double curvature, LengthUnit unit) =>
        Math.Abs(curvature) < 1e-6 ? "straight" : PlankWords.Radius(1 / Math.Abs(curvature), unit);

    private static string CurvatureWord(double gauss) =>
        Math.Abs(gauss) < 1e-10 ? "it could be laid flat without strain."
        : gauss < 0 ? "saddle-shaped, so edges come out hollow."
        : "cup-shaped, so edges come out round.";

    /// <summary>To the thousandth of a millimetre for who follows the program; in feet and inches as all else.</summary>
    private static string Fine(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{Num(mm / LengthUnits.MmPer(unit), 3 + (int)Math.Log10(LengthUnits.MmPer(unit)))} {LengthUnits.Name(unit)}"
            : LengthText.Fine(mm, unit);

    /// <summary>at most 0.5 mm; under 1/32".</summary>
    private static string Most(double mm, LengthUnit unit) => LengthText.Bound(Fine(mm, unit));

    private static string OffChord(PlankEdge edge, LengthUnit unit)
    {
        string[] off =
        [
            .. new[] { ("round", edge.RoundMm), ("hollow", edge.HollowMm) }
                .Where(o => o.Item2 > 0.0005)
                .Select(o => $"{o.Item1} {Fine(o.Item2, unit)}"),
        ];
        return off.Length == 0 ? "straight" : string.Join(", ", off);
    }

    private static string Num(double value, int decimals) =>
        double.IsFinite(value) ? NumberText.Padded(value, decimals) : "unbounded";
}
