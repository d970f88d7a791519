using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Jobs for the saw by chance: mixed racks with faults and bad ends, sheets, a yard; straight, slanting, tapered, corner and bulging pieces with hands, grades and twins.</summary>
internal static class RandomCutting
{
    public static Gen<(NestSpec Spec, ImmutableArray<SawPiece> Pieces)> Gen =>
        CsCheck
            .Gen.Select(Job, Boards, Pieces)
            .Select((spec, boards, pieces) => (spec with { Boards = boards }, pieces));

    private static readonly string[] Grades = ["clear", "select", "common"];
    private static readonly string?[] Woods = [null, "douglas-fir", "larch"];

    private static Gen<T> One<T>(params T[] of) =>
        CsCheck.Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static Gen<NestSpec> Job =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Double[0, 6],
                CsCheck.Gen.Double[0, 8],
                CsCheck.Gen.Double[0, 30],
                One(0, 0.2, 1.0),
                CsCheck.Gen.Bool,
                CsCheck.Gen.Bool,
                CsCheck.Gen.Int[1, 1000]
            )
            .Select(
                (kerf, edge, end, proud, pairs, cost, seed) =>
                    NestSpec.Usual with
                    {
                        KerfMm = kerf,
                        EdgeMm = edge,
                        EndMm = end,
                        ProudMm = proud,
                        PairsTogether = pairs,
                        Objective = cost ? NestObjective.Cost : NestObjective.Area,
                        Grades = [.. Grades],
                        Seed = seed,
                        Rounds = 2,
                    }
            );

    private static Gen<ImmutableArray<StockBoard>> Boards =>
        Board
            .Array[1, 8]
            .Select(boards =>
                boards
                    .Select(
                        (b, i) =>
                            b with
                            {
                                Id = "B-" + (i + 1).ToString("00", CultureInfo.InvariantCulture),
                                Line = i + 2,
                            }
                    )
                    .ToImmutableArray()
            );

    private static Gen<StockBoard> Board =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Select(
                    CsCheck.Gen.Double[900, 4200],
                    CsCheck.Gen.Double[90, 420],
                    CsCheck.Gen.Double[9, 10.4],
                    CsCheck.Gen.Int[0, 9]
                ),
                CsCheck.Gen.Select(
                    One(Woods),
                    One<string?>([null, .. Grades]),
                    CsCheck.Gen.Int[1, 6],
                    CsCheck.Gen.Int[0, 90]
                ),
                CsCheck.Gen.Select(CsCheck.Gen.Double[0, 80], CsCheck.Gen.Double[0, 80]),
                Fault.Array[0, 3]
            )
            .Select(
                (size, sort, ends, faults) =>
                {
                    (double length, double width, double thick, int kind) = size;
                    bool sheet = kind == 0,
                        yard = kind >= 7;
                    StockBoard board = SawPieces.Board("", length, width) with
                    {
                        // Thicknesses that boards have, so that pieces find more than one.
                        ThicknessMm = Math.Round(thick * 2) / 2,
                        Species = sort.Item1,
                        Grade = sort.Item2,
                        Count = yard ? null : sort.Item3,
                        Price = sort.Item4,
                        OnHand = !yard,
                        MarkedEndMm = ends.Item1,
                        OtherEndMm = ends.Item2,
                        Faults = yard
                            ? []
                            :
                            [
                                .. faults.Select(f => new BoardFault(
                                    f.At * length,
                                    Math.Min(length, (f.At * length) + f.Long),
                                    f.Low is { } low ? low * width : null,
                                    f.Low is { } l ? Math.Min(width, (l * width) + f.Wide) : null
                                )),
                            ],
                    };
                    return sheet
                        ? board with
                        {
                            Kind = StockKind.Sheet,
                            LengthMm = 1220,
                            WidthMm = 2440,
                            Faults = [],
                            GrainAcross = sort.Item4 % 2 == 0,
                        }
                        : board;
                }
            );

    private static Gen<(double At, double Long, double? Low, double Wide)> Fault =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[0, 1],
            CsCheck.Gen.OneOf(CsCheck.Gen.Const(0.0), CsCheck.Gen.Double[0, 150]),
            CsCheck.Gen.OneOf(
                CsCheck.Gen.Const((double?)null),
                CsCheck.Gen.Double[0, 1].Select(d => (double?)d)
            ),
            CsCheck.Gen.Double[0, 120]
        );

    private static Gen<ImmutableArray<SawPiece>> Pieces =>
        Piece
            .Array[1, 14]
            .Select(pieces =>
                pieces
                    .SelectMany(
                        (p, i) =>
                        {
                            SawPiece starboard = p with
                            {
                                Id = PieceId.Whole(PlankId.OfBottom(Side.Starboard, 1, i + 1)),
                            };
                            return p.Twin is null
                                ? [starboard]
                                : new[]
                                {
                                    starboard with
                                    {
                                        Twin = starboard.Id.Twin,
                                    },
                                    starboard with
                                    {
                                        Id = starboard.Id.Twin,
                                        Twin = starboard.Id,
                                        Outline =
                                        [
                                            .. p.Outline.Select(v => new Vec2(v.X, -v.Y)).Reverse(),
                                        ],
                                    },
                                };
                        }
                    )
                    .ToImmutableArray()
            );

    private static Gen<SawPiece> Piece =>
        CsCheck
            .Gen.Select(
                Shape,
                One(Woods),
                One<string?>([null, null, .. Grades]),
                CsCheck.Gen.Bool,
                CsCheck.Gen.Bool,
                CsCheck.Gen.Bool
            )
            .Select(
                (shape, wood, grade, end, face, twin) =>
                    SawPieces.Of("S1-00", shape) with
                    {
                        Species = wood,
                        LeastGrade = grade,
                        MayTurnEnd = end,
                        MayTurnFace = face,
                        Twin = twin ? Named.Piece("P1-00") : null,
                    }
            );

    /// <summary>Anywhere in the plane, as a plank's own coordinates are.</summary>
    private static Gen<Vec2[]> Shape =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Select(
                    CsCheck.Gen.Double[300, 1800],
                    CsCheck.Gen.Double[40, 200],
                    CsCheck.Gen.Double[0.15, 1]
                ),
                CsCheck.Gen.Select(CsCheck.Gen.Double[-1, 1], CsCheck.Gen.Double[-1, 1]),
                CsCheck.Gen.Int[0, 4],
                CsCheck.Gen.Double[-500, 500]
            )
            .Select(
                (size, lean, kind, off) =>
                {
                    (double l, double w, double narrow) = size;
                    double a = lean.Item1 * Math.Min(w, l / 3),
                        b = lean.Item2 * Math.Min(w, l / 3);
                    Vec2[] shape = kind switch
                    {
                        // Parallel ends; ends at any angle; tapered; a corner piece; edges that bulge.
                        0 => [new(0, 0), new(l, 0), new(l + a, w), new(a, w)],
                        1 => [new(0, 0), new(l, 0), new(l + b, w), new(a, w)],
                        2 => [new(0, 0), new(l, 0), new(l + b, w * narrow), new(a, w)],
                        3 => [new(0, 0), new(l, 0), new(l * narrow, w)],
                        _ => Bulging(l, w, a, b),
                    };
                    return shape.Select(p => p + new Vec2(off, -off / 7)).ToArray();
                }
            );

    private static Vec2[] Bulging(double l, double w, double a, double b)
    {
        const int Steps = 40;
        IEnumerable<double> steps = Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps);
        return
        [
            .. steps.Select(t => new Vec2(t * l, -2 * t * (1 - t))),
            .. steps
                .Reverse()
                .Select(t => new Vec2((t * (l + b)) + ((1 - t) * a), w + (6 * t * (1 - t)))),
        ];
    }
}
