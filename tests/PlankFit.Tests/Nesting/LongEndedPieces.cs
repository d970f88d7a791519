using System.Collections.Immutable;
using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Pieces by chance with ends that are left long.</summary>
internal static class LongEndedPieces
{
    /// <summary>Two to four of one width, edges along the grain, one end fit and the other left long at an angle of its own.</summary>
    public static Gen<ImmutableArray<SawPiece>> Few =>
        Gen.Select(
                Gen.Double[400, 900],
                Gen.Double[-80, 80],
                Gen.Double[-80, 80],
                Gen.Double[5, 40],
                Gen.Double[0, 1],
                Gen.Bool
            )
            .Array[2, 4]
            .Select(of =>
                of.Select(
                        (p, i) =>
                        {
                            (
                                double length,
                                double fit,
                                double lean,
                                double by,
                                double part,
                                bool turn
                            ) = p;
                            // Along the board, so much is what stands square to the net end.
                            double along = by * Math.Sqrt(1 + (lean * lean / (150 * 150)));
                            Vec2 low = new(length, 0),
                                high = new(length + lean, 150);
                            return SawPieces.Of(
                                FormattableString.Invariant($"S1-{i + 1:00}"),
                                new(0, 0),
                                new(length + along, 0),
                                new(length + along + lean, 150),
                                new(fit, 150)
                            ) with
                            {
                                MayTurnEnd = turn,
                                LongEnds =
                                [
                                    new([low, high], -1 * (high - low).Unit().Left(), part * by)
                                    {
                                        ByMm = by,
                                    },
                                ],
                            };
                        }
                    )
                    .ToImmutableArray()
            );

    /// <summary>Those of <see cref="RandomCutting"/>; the ends of four-sided pieces are left long by chance.</summary>
    public static Gen<(NestSpec Spec, ImmutableArray<SawPiece> Pieces)> Jobs =>
        Gen.Select(RandomCutting.Gen, Gen.Int[0, 1 << 20])
            .Select(
                (job, chance) =>
                    (
                        job.Spec,
                        job.Pieces.Select(
                                (p, i) =>
                                    p.Outline.Length == 4
                                        ? LeftLong(p, new Random(chance + p.PlankId.Number))
                                        : p
                            )
                            .ToImmutableArray()
                    )
            );

    private static SawPiece LeftLong(SawPiece piece, Random chance)
    {
        ImmutableArray<LongEnd>.Builder ends = ImmutableArray.CreateBuilder<LongEnd>();
        double middle = piece.Outline.Average(p => p.X);
        for (int i = 0; i < 4; i++)
        {
            Vec2 a = piece.Outline[i],
                b = piece.Outline[(i + 1) % 4],
                // Counter-clockwise.
                outward = -1 * (b - a).Unit().Left();
            // The same numbers for a piece and its twin, whose outline begins elsewhere.
            bool far = (a.X + b.X) / 2 > middle;
            if (Math.Abs(outward.X) < 0.5)
            {
                continue;
            }

            var own = new Random(chance.Next(1) + (far ? 7 : 11) + (int)piece.AreaMm2);
            double by = 5 + (30 * own.NextDouble()),
                part = own.Next(3) == 0 ? 1 : own.NextDouble();
            if (own.Next(3) > 0)
            {
                ends.Add(
                    new([a - (by * outward), b - (by * outward)], outward, part * by) { ByMm = by }
                );
            }
        }

        return piece with
        {
            LongEnds = ends.ToImmutable(),
        };
    }
}
