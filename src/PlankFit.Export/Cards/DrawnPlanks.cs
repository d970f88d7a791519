using System.Collections.Immutable;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>A plank that is drawn, and the one to port that its drawing serves as well; null where it serves itself alone.</summary>
internal readonly record struct DrawnPlank(Plank Plank, PlankId? Twin);

/// <summary>
/// Which planks of a layer are drawn: one of each pair where port is the mirror image of starboard in shape, joints and all that is said of it, both where anything
/// tells them apart or the job asks for all.
/// </summary>
internal static class DrawnPlanks
{
    /// <summary>Shapes nearer than this are the same, mm.</summary>
    private const double SameMm = 1e-6;

    /// <summary>
    /// Places of fastenings are searched for on each side by itself, and come out this much apart at the most where they are meant to be the same, mm: a fifth of
    /// what paper shows, and no drill follows it.
    /// </summary>
    private const double SamePlaceMm = 0.1;

    /// <summary>
    /// Pieces are clipped out of the plank's own outline, each side's by itself, on a grid so fine: of two vertices that fall together either may be kept. What they
    /// are clipped from and by is compared at <see cref="SameMm"/>.
    /// </summary>
    private const double SamePieceMm = 2e-3;

    public static ImmutableArray<DrawnPlank> Of(PlanShown shown, PlankLayerPlan layer, Side side)
    {
        if (shown.Plan.Job.Output.BothSides)
        {
            return [.. layer.On(side).Select(p => new DrawnPlank(p, null))];
        }

        Side other = side == Side.Starboard ? Side.Port : Side.Starboard;
        var twins = layer.On(other).ToDictionary(p => p.Id);
        return
        [
            .. layer
                .On(side)
                .Select(p =>
                    twins.TryGetValue(p.Id.Twin, out Plank? twin) && AreAlike(shown, layer, p, twin)
                        ? new DrawnPlank(p, twin.Id)
                        : new DrawnPlank(p, null)
                )
                // The pair is drawn to starboard.
                .Where(d => side == Side.Starboard || d.Twin is null),
        ];
    }

    private static bool AreAlike(PlanShown shown, PlankLayerPlan layer, Plank a, Plank b) =>
        a.IsSawn == b.IsSawn
        && a.IsFitted == b.IsFitted
        && a.IsRefused == b.IsRefused
        && a.ForwardEdge.Neighbour?.Twin == b.ForwardEdge.Neighbour
        && a.AfterEdge.Neighbour?.Twin == b.AfterEdge.Neighbour
        && AreMirrored(a.FlatCut, b.FlatCut)
        && AreMirrored(a.FlatNet, b.FlatNet)
        && AreMirrored([.. a.Marks.Select(m => m.At)], [.. b.Marks.Select(m => m.At)])
        && AreMirrored(shown.Plan.Joints.On(a.Id), shown.Plan.Joints.On(b.Id))
        && AreMirrored(
            [.. shown.Added.SelectMany(x => x.Places(a))],
            [.. shown.Added.SelectMany(x => x.Places(b))],
            SamePlaceMm
        )
        && Notes(shown, layer, a).SequenceEqual(Notes(shown, layer, b));

    private static bool AreMirrored(JointedPlank? a, JointedPlank? b) =>
        a is null || b is null
            ? a is null && b is null
            : a.Pieces.Length == b.Pieces.Length
                && a.Pieces.Zip(b.Pieces)
                    .All(p => AreMirrored(p.First.Cut, p.Second.Cut, SamePieceMm))
                && a.Joints.Zip(b.Joints)
                    .All(j =>
                        AreMirrored(j.First.OuterLine, j.Second.OuterLine)
                        && AreMirrored(j.First.InnerLine, j.Second.InnerLine)
                    );

    /// <summary>Whether the points of one are those of the other with n negated, in whatever order.</summary>
    private static bool AreMirrored(
        ImmutableArray<Vec2> a,
        ImmutableArray<Vec2> b,
        double withinMm = SameMm
    )
    {
        if (a.Length != b.Length)
        {
            return false;
        }

        // In order of s, so that only the few beside a point are asked.
        Vec2[] one = [.. a.OrderBy(p => p.X)],
            other = [.. b.Select(p => new Vec2(p.X, -p.Y)).OrderBy(p => p.X)];
        return AllIn(one, other, withinMm) && AllIn(other, one, withinMm);
    }

    private static bool AllIn(Vec2[] some, Vec2[] others, double withinMm)
    {
        int from = 0;
        foreach (Vec2 p in some)
        {
            while (from < others.Length && others[from].X <= p.X - withinMm)
            {
                from++;
            }

            int i = from;
            while (
                i < others.Length
                && others[i].X < p.X + withinMm
                && p.ChordTo(others[i]) >= withinMm
            )
            {
                i++;
            }

            if (i == others.Length || others[i].X >= p.X + withinMm)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>All that is said of a plank: the same of both, or they are no pair.</summary>
    private static IEnumerable<string> Notes(PlanShown shown, PlankLayerPlan layer, Plank plank)
    {
        LengthUnit unit = shown.Plan.Job.Units;
        return PlankNotes
            .Of(layer, plank, unit)
            .Concat(CardSubject.EdgeLines(plank, unit))
            .Concat(PartNotes.OnCard(shown, plank))
            .Concat(plank.Ends.Select(e => EndFigures.Line(plank, e, layer.Spec.ThicknessMm, unit)))
            .Concat(plank.Marks.Select(m => m.Label));
    }
}
