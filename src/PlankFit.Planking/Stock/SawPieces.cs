using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Stock;

/// <summary>All that is still to be sawn for a bottom.</summary>
public static class SawPieces
{
    /// <summary>A bevel less than this is none to the saw, degrees.</summary>
    private const double SquareDegrees = 0.05;

    /// <summary>Every plank of both sides, or its pieces where it is jointed; what is sawn or fitted already, and what is refused, is left out.</summary>
    public static ImmutableArray<SawPiece> Of(NestSpec spec, Planked planked, JointPlan joints) =>
        Of(spec, planked, joints, p => !p.IsFixed && !p.IsRefused);

    /// <summary>The pieces that no board is sawn for, since their planks are not trusted with their bend.</summary>
    public static ImmutableArray<SawPiece> Refused(
        NestSpec spec,
        Planked planked,
        JointPlan joints
    ) => Of(spec, planked, joints, p => p.IsRefused);

    private static ImmutableArray<SawPiece> Of(
        NestSpec spec,
        Planked planked,
        JointPlan joints,
        Func<Plank, bool> which
    )
    {
        SawPiece[] pieces =
        [
            .. from layer in planked.PlankLayers
            from side in new[] { Side.Starboard, Side.Port }
            from plank in layer.On(side)
            where which(plank)
            from piece in Of(spec, planked.Job.Timber?.Species, joints, layer, plank)
            select piece,
        ];
        if (!spec.PairsTogether)
        {
            return [.. pieces];
        }

        var ids = pieces.Select(p => p.Id).ToHashSet();
        return [.. pieces.Select(p => ids.Contains(p.Id.Twin) ? p with { Twin = p.Id.Twin } : p)];
    }

    private static IEnumerable<SawPiece> Of(
        NestSpec spec,
        string? species,
        JointPlan joints,
        PlankLayerPlan layer,
        Plank plank
    )
    {
        bool master = plank.Kind == PlankKind.Master;
        string? least =
            master && spec.MasterGrade is { } asked
                ? Better(spec, asked, spec.LeastGrades.GetValueOrDefault(layer.Spec.Name))
                : spec.LeastGrades.GetValueOrDefault(layer.Spec.Name);
        SawPiece Piece(PieceId id, ImmutableArray<Vec2> outline, bool faceMarked) =>
            new(
                id,
                outline,
                layer.Spec.ThicknessMm,
                new(layer.Planks.Species ?? species, least),
                new(spec.TurnEndForEnd, spec.TurnFaceForFace && !faceMarked && !IsBevelled(plank)),
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
        return joints.On(plank.Id) is { } jointed
            ? jointed.Pieces.Select(p =>
                // A taper is planed on one face, which is marked on the other.
                Piece(
                    p.Id,
                    p.Cut,
                    p.Inboard?.Kind == JointKind.Scarf || p.Outboard?.Kind == JointKind.Scarf
                )
            )
            : [Piece(PieceId.Whole(plank.Id), plank.FlatCut, false)];
    }

    /// <summary>Whether a piece of a plank is the one with an end of it.</summary>
    private static bool Holds(ImmutableArray<Vec2> outline, double x) =>
        outline.Min(p => p.X) <= x && outline.Max(p => p.X) >= x;

    private static string Better(NestSpec spec, string asked, string? other) =>
        other is not null && StockMatch.Rank(spec, other) < StockMatch.Rank(spec, asked)
            ? other
            : asked;

    private static bool IsBevelled(Plank plank) =>
        plank.Ends.Any(e =>
            Math.Abs(e.BevelDegrees) > SquareDegrees
            || Math.Abs(e.BevelAtLeastN) > SquareDegrees
            || Math.Abs(e.BevelAtGreatestN) > SquareDegrees
        );
}
