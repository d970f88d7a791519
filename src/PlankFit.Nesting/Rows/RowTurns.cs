using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Rows;

/// <summary>Which of two neighbours in a row has its end between them sawn at the other's angle.</summary>
internal enum RowTurn : byte
{
    None,
    First,
    Second,
}

/// <summary>
/// Ends left long by more than must be, sawn at their neighbour's angle where that lets the two come nearer. The two ends of a piece have nothing to do with each
/// other. Of single pieces only.
/// </summary>
internal sealed class RowTurns
{
    /// <summary>What is not worth another angle, mm.</summary>
    private const double GainMm = 0.01;

    private readonly ItemPose[] poses;
    private readonly TurnableEnd?[] right;
    private readonly TurnableEnd?[] left;
    private readonly Vec2?[] rightAlong;
    private readonly Vec2?[] leftAlong;
    private readonly ThinOutline[] hulls;
    private readonly SawTolerances tolerances;

    private RowTurns(ItemPose[] poses, NestItem[] items, SawTolerances tolerances)
    {
        this.poses = poses;
        this.tolerances = tolerances;
        LaidPiece?[] laid =
        [
            .. poses.Select(
                (p, i) => items[i].Count > 0 ? p.Laid[0].Of(items[i].Copies[0], default) : null
            ),
        ];
        TurnableEnd? End(LaidPiece? piece, bool far) =>
            piece is { Piece.LongEnds.IsEmpty: false }
            && TurnableEnd.Of(piece, far, tolerances) is { HasSlack: true } end
                ? end
                : null;
        Vec2? Along(LaidPiece? piece, bool far) =>
            piece is null ? null : TurnableEnd.Direction(piece, far, tolerances);
        right = [.. laid.Select(l => End(l, true))];
        left = [.. laid.Select(l => End(l, false))];
        rightAlong = [.. laid.Select(l => Along(l, true))];
        leftAlong = [.. laid.Select(l => Along(l, false))];
        hulls =
        [
            .. laid.Select(
                (l, i) =>
                    right[i] is null && left[i] is null
                        ? new ThinOutline([], 0)
                        : RowShape.Thinned([l!.Outline])
            ),
        ];
    }

    /// <summary>Null where no end has more than it must.</summary>
    public static RowTurns? Of(ImmutableArray<NestItem> items, SawTolerances tolerances) =>
        items.Any(i => i.Copies.Any(c => c.LongEnds.Any(e => e.LeastMm < e.ByMm)))
            ? new(
                [.. items.SelectMany(i => i.Poses)],
                [.. items.SelectMany(i => i.Poses.Select(_ => i))],
                tolerances
            )
            : null;

    /// <summary>Whether an end of a pose may be turned in a row.</summary>
    public bool IsTurnable(int pose, bool far) => (far ? right : left)[pose] is not null;

    /// <summary>The least pitch of two poses, and which end is turned for it.</summary>
    /// <param name="plainMm">Theirs as they are.</param>
    public (double PitchMm, RowTurn Turn) Least(int one, int next, double plainMm, double kerfMm)
    {
        (double PitchMm, RowTurn Turn) least = (plainMm, RowTurn.None);
        if (
            leftAlong[next] is { } nexts
            && right[one] is not null
            && Shape(one, null, nexts) is { } first
        )
        {
            double pitch = Pitch.Of(first, poses[next].Shape, kerfMm);
            least = pitch < least.PitchMm - GainMm ? (pitch, RowTurn.First) : least;
        }

        if (
            rightAlong[one] is { } ones
            && left[next] is not null
            && Shape(next, ones, null) is { } second
        )
        {
            double pitch = Pitch.Of(poses[one].Shape, second, kerfMm);
            least = pitch < least.PitchMm - GainMm ? (pitch, RowTurn.Second) : least;
        }

        return least;
    }

    /// <summary>A pose in a row, its ends turned to those of its neighbours where they are.</summary>
    /// <param name="before">The pose before it that its end is turned to; null where that is not, and so <paramref name="after"/>.</param>
    public RowShape In(int pose, int? before, int? after) =>
        before is null && after is null
            ? poses[pose].Shape
            : Shape(
                pose,
                before is { } b ? rightAlong[b] : null,
                after is { } a ? leftAlong[a] : null
            ) ?? poses[pose].Shape;

    /// <summary>The piece as it is sawn there.</summary>
    public LaidPiece Of(LaidPiece laid, int? before, int? after)
    {
        if (before is { } b && TurnableEnd.Of(laid, false, tolerances) is { } near)
        {
            laid = near.Turned(rightAlong[b]!.Value);
        }

        return after is { } a && TurnableEnd.Of(laid, true, tolerances) is { } farther
            ? farther.Turned(leftAlong[a]!.Value)
            : laid;
    }

    /// <summary>From the pose's own least x and y, as its plain shape is; null where the end cannot be turned so.</summary>
    private RowShape? Shape(int pose, Vec2? toBefore, Vec2? toAfter)
    {
        ImmutableArray<Vec2> hull = hulls[pose].Points;
        foreach (
            (TurnableEnd? end, Vec2? along) in new[]
            {
                (left[pose], toBefore),
                (right[pose], toAfter),
            }
        )
        {
            if (along is not { } direction)
            {
                continue;
            }

            if (
                end?.Reach(direction) is not { } reach
                || end.Cut(hull, direction, reach) is not { } cut
            )
            {
                return null;
            }

            hull = cut;
        }

        return RowShape.Sawn(hull, poses[pose].Shape.HeightMm, hulls[pose].WithinMm);
    }
}
