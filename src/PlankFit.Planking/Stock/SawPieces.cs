using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>All that is still to be sawn for a bottom.</summary>
public static class SawPieces
{
    /// <summary>A bevel less than this is none to the saw, degrees.</summary>
    private const double SquareDegrees = 0.05;

    /// <summary>Every plank of both sides, or its pieces where it is jointed; what is sawn or fitted already is left out.</summary>
    /// <exception cref="ArgumentException">The job names no stock.</exception>
    public static ImmutableArray<SawPiece> Of(BottomPlan plan)
    {
        if (plan.Job.Nest is not { } spec)
        {
            throw new ArgumentException("the job names no stock", nameof(plan));
        }

        SawPiece[] pieces =
        [
            .. from layer in plan.PlankLayers
            from side in new[] { Side.Starboard, Side.Port }
            from plank in layer.On(side)
            where !plank.IsFixed
            from piece in Of(plan, spec, layer, plank)
            select piece,
        ];
        if (!spec.PairsTogether)
        {
            return [.. pieces];
        }

        var ids = pieces.Select(p => p.Id).ToHashSet();
        return
        [
            .. pieces.Select(p =>
                Mirror(p.Id) is var twin && ids.Contains(twin) ? p with { Twin = twin } : p
            ),
        ];
    }

    private static IEnumerable<SawPiece> Of(
        BottomPlan plan,
        NestSpec spec,
        PlankLayerPlan layer,
        Plank plank
    )
    {
        bool master = plank.Kind == PlankKind.Master;
        string? least =
            master && spec.MasterGrade is { } asked
                ? Better(spec, asked, spec.LeastGrades.GetValueOrDefault(layer.Spec.Name))
                : spec.LeastGrades.GetValueOrDefault(layer.Spec.Name);
        SawPiece Piece(string id, ImmutableArray<Geometry.Vec2> outline, bool faceMarked) =>
            new(
                id,
                plank.Id,
                plank.Side,
                plank.Layer,
                outline,
                layer.Spec.ThicknessMm,
                layer.Planks.Species ?? plan.Job.Timber?.Species,
                least,
                spec.TurnEndForEnd,
                spec.TurnFaceForFace && !faceMarked && !IsBevelled(plank),
                null,
                master
            )
            {
                LongEnds =
                [
                    .. LongEnd
                        .Of(plank)
                        .Where(e => Holds(outline, e.Net[e.Net.Length / 2].X))
                        .Select(e =>
                            e with
                            {
                                LeastMm = Math.Min(spec.LeastOverhangMm ?? e.ByMm, e.ByMm),
                            }
                        ),
                ],
            };
        return plan.Joints?.On(plank.Id) is { } jointed
            ? jointed.Pieces.Select(p =>
                // A taper is planed on one face, which is marked on the other.
                Piece(
                    p.Id,
                    p.Cut,
                    p.Inboard?.Kind == JointKind.Scarf || p.Outboard?.Kind == JointKind.Scarf
                )
            )
            : [Piece(plank.Id, plank.FlatCut, false)];
    }

    /// <summary>Whether a piece of a plank is the one with an end of it.</summary>
    private static bool Holds(ImmutableArray<Geometry.Vec2> outline, double x) =>
        outline.Min(p => p.X) <= x && outline.Max(p => p.X) >= x;

    private static string Better(NestSpec spec, string asked, string? other) =>
        other is not null && Serves.Rank(spec, other) < Serves.Rank(spec, asked) ? other : asked;

    private static bool IsBevelled(Plank plank) =>
        plank.Ends.Any(e =>
            Math.Abs(e.BevelDegrees) > SquareDegrees
            || Math.Abs(e.BevelAtLeastN) > SquareDegrees
            || Math.Abs(e.BevelAtGreatestN) > SquareDegrees
        );

    /// <summary>P1-07 for S1-07.</summary>
    private static string Mirror(string id) => (id[0] == 'S' ? 'P' : 'S') + id[1..];
}
