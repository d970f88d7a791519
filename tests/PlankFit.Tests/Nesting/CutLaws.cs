using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// What every plan of cutting must keep, asked of it by other means than it was made: here how many of what, and what it counts; on each board by
/// <see cref="BoardLaws"/>, <see cref="LaneLaws"/>, <see cref="SawLaws"/> and <see cref="OffcutLaws"/>.
/// </summary>
internal static class CutLaws
{
    /// <summary>By so much may money and areas differ that are summed in another order, as a part of them.</summary>
    private const double Summing = 1e-9;

    /// <summary>Thickness is read off a rule, to so many mm.</summary>
    private const double RuleMm = 0.05;

    public static List<string> Broken(NestPlan plan, IReadOnlyList<SawPiece> asked)
    {
        List<string> broken =
        [
            .. Quantity(plan, asked),
            .. Stock(plan),
            .. Twins(plan),
            .. Values(plan),
            .. plan.Boards.SelectMany(b => BoardLaws.Broken(plan.Spec, b)),
            .. plan.Boards.SelectMany(b => LaneLaws.Broken(plan.Spec, b)),
        ];
        // How it is sawn and what is left over follow from the rest, and have no sense in boards that are wrong.
        return broken.Count > 0
            ? broken
            :
            [
                .. plan.Boards.SelectMany(b => SawLaws.Broken(plan.Spec, b)),
                .. plan.Boards.SelectMany(b => OffcutLaws.Broken(plan.Spec, b)),
            ];
    }

    /// <summary>Every piece once, placed or told not to be, and as it was asked for.</summary>
    private static IEnumerable<string> Quantity(NestPlan plan, IReadOnlyList<SawPiece> asked)
    {
        ILookup<PieceId, SawPiece> told = plan
            .Boards.SelectMany(b => b.Pieces)
            .Select(p => p.Piece)
            .Concat(plan.Unplaced.Select(u => u.Piece))
            .ToLookup(p => p.Id);
        foreach (SawPiece piece in asked)
        {
            SawPiece[] found = [.. told[piece.Id]];
            if (found.Length != 1)
            {
                yield return $"{piece.Id} is in the plan {found.Length} times";
            }

            foreach (SawPiece other in found)
            {
                if (
                    !other.Outline.AsSpan().SequenceEqual(piece.Outline.AsSpan())
                    || !SameEnds(other, piece)
                    || other with { Outline = piece.Outline, LongEnds = piece.LongEnds } != piece
                )
                {
                    yield return $"{piece.Id} is another piece than was asked for";
                }
            }
        }

        HashSet<PieceId> ids = [.. asked.Select(p => p.Id)];
        foreach (IGrouping<PieceId, SawPiece>? strange in told.Where(t => !ids.Contains(t.Key)))
        {
            yield return $"{strange.Key} was not asked for";
        }

        foreach (UnplacedPiece unplaced in plan.Unplaced.Where(u => u.Why.Length == 0))
        {
            yield return $"{unplaced.Piece.Id} is left out without a word";
        }
    }

    private static bool SameEnds(SawPiece a, SawPiece b) =>
        a.LongEnds.Length == b.LongEnds.Length
        && a.LongEnds.Zip(b.LongEnds)
            .All(e =>
                e.First.LeastMm == e.Second.LeastMm
                && e.First.Outward == e.Second.Outward
                && e.First.Net.AsSpan().SequenceEqual(e.Second.Net.AsSpan())
            );

    /// <summary>Boards that there are, each once, and fit for what lies in them.</summary>
    private static IEnumerable<string> Stock(NestPlan plan)
    {
        foreach (
            IGrouping<string, SawnBoard>? same in plan
                .Boards.GroupBy(b => b.Id)
                .Where(g => g.Count() > 1)
        )
        {
            yield return $"board {same.Key} is sawn {same.Count()} times";
        }

        foreach (IGrouping<StockBoard, SawnBoard> row in plan.Boards.GroupBy(b => b.Stock))
        {
            if (!plan.Spec.Boards.Contains(row.Key))
            {
                yield return $"{row.Key.Id} is not in the stock";
            }

            if (row.Count() > (row.Key.Count ?? int.MaxValue))
            {
                yield return $"{row.Count()} boards of {row.Key.Id}, of which there are {row.Key.Count}";
            }
        }

        foreach (SawnBoard board in plan.Boards)
        {
            if (board.Id != board.Stock.Id && !board.Id.StartsWith(board.Stock.Id + "."))
            {
                yield return $"{board.Id} does not name its row of the stock, {board.Stock.Id}";
            }

            if (board.Pieces.IsEmpty)
            {
                yield return $"nothing lies in {board.Id}";
            }

            foreach (SawPiece piece in board.Pieces.Select(p => p.Piece))
            {
                double spare = board.Stock.ThicknessMm - piece.ThicknessMm - plan.Spec.PlaneMm;
                if (spare < -RuleMm || spare > plan.Spec.ThickerMm + RuleMm)
                {
                    yield return $"{board.Id} is {board.Stock.ThicknessMm} mm thick, {piece.Id} {piece.ThicknessMm}";
                }

                if (
                    board.Stock.Species is { } wood
                    && piece.Species is { } wanted
                    && !wood.Equals(wanted, StringComparison.OrdinalIgnoreCase)
                )
                {
                    yield return $"{board.Id} is {wood}, {piece.Id} wants {wanted}";
                }

                string[] good =
                [
                    .. plan.Spec.Grades.TakeWhile(g =>
                        !g.Equals(piece.LeastGrade, StringComparison.OrdinalIgnoreCase)
                    ),
                    piece.LeastGrade ?? "",
                ];
                if (
                    piece.LeastGrade is not null
                    && !good.Contains(board.Stock.Grade, StringComparer.OrdinalIgnoreCase)
                )
                {
                    yield return $"{board.Id} is of grade {board.Stock.Grade}, {piece.Id} wants {piece.LeastGrade}";
                }
            }
        }
    }

    private static IEnumerable<string> Twins(NestPlan plan)
    {
        if (!plan.Spec.PairsTogether)
        {
            yield break;
        }

        ILookup<PieceId, string> boards = plan
            .Boards.SelectMany(b => b.Pieces.Select(p => (p.Piece, b.Id)))
            .ToLookup(p => p.Piece.Id, p => p.Id);
        // Twins that no board is clear for together are told so, by name, and only those may be apart.
        HashSet<PieceId> told =
        [
            .. plan
                .Findings.Where(f =>
                    f.Message.StartsWith("no board is clear for both", StringComparison.Ordinal)
                )
                .SelectMany(f => f.Where.Split(", ").Select(Named.Piece)),
        ];
        foreach (LaidPiece laid in plan.Boards.SelectMany(b => b.Pieces))
        {
            if (
                laid.Piece.Twin is { } apart
                && told.Contains(laid.Piece.Id)
                && told.Contains(apart)
            )
            {
                if (plan.Spec.Boards.Any(b => HoldsBoth(plan, b, laid.Piece)))
                {
                    yield return $"{laid.Piece.Id} and its twin are told to be apart, and a board would hold both";
                }

                continue;
            }

            if (laid.Piece.Twin is { } twin && !boards[twin].SequenceEqual(boards[laid.Piece.Id]))
            {
                yield return $"{laid.Piece.Id} and its twin {twin} are not in one board";
            }
        }
    }

    /// <summary>A board without faults that is surely long enough for a piece and its twin as rectangles one behind the other.</summary>
    private static bool HoldsBoth(NestPlan plan, StockBoard board, SawPiece piece)
    {
        SawPiece twin = plan
            .Boards.SelectMany(b => b.Pieces)
            .Select(p => p.Piece)
            .Concat(plan.Unplaced.Select(u => u.Piece))
            .First(p => p.Id == piece.Twin);
        double Size(SawPiece p, Func<PlankFit.Geometry.Primitives.Vec2, double> along) =>
            p.Outline.Max(along) - p.Outline.Min(along);
        return board.Kind == StockKind.Board
            && board.Faults.IsEmpty
            && StockMatch.Piece(plan.Spec, board, piece)
            && StockMatch.Piece(plan.Spec, board, twin)
            && board.LengthMm - board.MarkedEndMm - board.OtherEndMm - (2 * plan.Spec.EndMm)
                >= Size(piece, p => p.X) + Size(twin, p => p.X) + plan.Spec.KerfMm + 1
            && board.WidthMm - (2 * plan.Spec.EdgeMm)
                >= Math.Max(Size(piece, p => p.Y), Size(twin, p => p.Y));
    }

    /// <summary>What is said of a plan's worth is what its boards add up to, and no bound is above it.</summary>
    private static IEnumerable<string> Values(NestPlan plan)
    {
        double Cost(NestMeasure measure, StockBoard b) =>
            measure switch
            {
                NestMeasure.Area => b.LengthMm * b.WidthMm,
                NestMeasure.Cost => (double)(b.Price ?? 0),
                NestMeasure.BoughtArea => b.OnHand ? 0 : b.LengthMm * b.WidthMm,
                _ => b.OnHand ? 0 : (double)(b.Price ?? 0),
            };
        // Where one material is bought and another is not, the plan's worth is what is bought: each is counted as it is measured.
        HashSet<PieceId> measured =
        [
            .. plan.Materials.Where(m => m.Measure == plan.Measure).SelectMany(m => m.PieceIds),
        ];
        double sum = plan
            .Boards.Where(b => b.Pieces.Any(p => measured.Contains(p.Piece.Id)))
            .Sum(b => Cost(plan.Measure, b.Stock));
        if (!Near(sum, plan.Value))
        {
            yield return $"the boards come to {sum}, and {plan.Value} is said";
        }

        foreach (NestedMaterial material in plan.Materials)
        {
            HashSet<PieceId> ids = [.. material.PieceIds];
            double own = plan
                .Boards.Where(b => b.Pieces.Any(p => ids.Contains(p.Piece.Id)))
                .Sum(b => Cost(material.Measure, b.Stock));
            if (!Near(own, material.Value))
            {
                yield return $"{material.Name}: the boards come to {own}, and {material.Value} is said";
            }

            if (!(material.LowerBound >= 0) || material.LowerBound > material.Value * (1 + Summing))
            {
                yield return $"{material.Name}: a bound of {material.LowerBound}, and the plan has {material.Value}";
            }
        }

        PieceId[] placed = [.. plan.Boards.SelectMany(b => b.Pieces).Select(p => p.Piece.Id)];
        PieceId[] planned = [.. plan.Materials.SelectMany(m => m.PieceIds)];
        foreach (PieceId id in placed)
        {
            if (planned.Count(p => p == id) != 1)
            {
                yield return $"{id} is not in one material";
            }
        }
    }

    private static bool Near(double a, double b) =>
        Math.Abs(a - b) <= Summing * (1 + Math.Abs(a) + Math.Abs(b));
}
