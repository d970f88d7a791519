using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Export.Nest;

/// <summary>What a board's strips must tell between them: every cut by its number and every piece by its name, each so that it is taken for no other.</summary>
internal static class StripTold
{
    private const double LeastLaneMm = 5;

    /// <summary>A lane drawn as large as this is read however narrow it is.</summary>
    private const double Large = 0.25;

    public static IEnumerable<string> Faults(BottomPlan plan, SawnBoard board)
    {
        BoardCutList cuts = BoardCuts.Of(board, plan.Nest!.Spec);
        CircleShape[] rings =
        [
            .. CutSheets
                .Board(plan, plan.Nest!.Spec, board)
                .Shapes.OfType<CircleShape>()
                .Where(c => c.Fill == 1),
        ];
        Strip[] strips = [.. Strip.Of(plan, cuts)];
        foreach (Strip strip in strips)
        {
            string where =
                $"{board.Id}, lanes {strip.View.FromLane} to {strip.View.ToLane}, {strip.View.FromMm:0} to {strip.View.ToMm:0}";
            foreach (SawCut cut in strip.View.Cuts)
            {
                if (Wrong(strip, rings, cut) is { } wrong)
                {
                    yield return $"{where}: cut {cut.Number} {wrong}";
                }
            }

            foreach (LaidPiece piece in strip.View.IsOverview ? [] : strip.View.Pieces)
            {
                if (strip.Words.Count(w => w.Text == piece.Piece.Id.ToString()) != 1)
                {
                    yield return $"{where}: {piece.Piece.Id} is not named";
                }
            }

            foreach (Lettering name in strip.Names.Where(n => strip.Under(n).Any()))
            {
                yield return $"{where}: {name.Text} stands on {string.Join(", ", strip.Under(name))}";
            }

            double lane = strip.View.Lanes.Min(l => l.HighMm - l.LowMm) * strip.Factor;
            if (!strip.View.IsOverview && strip.Factor < Large && lane < LeastLaneMm)
            {
                yield return $"{where}: a lane of {lane:0.0} mm on paper";
            }
        }

        foreach (
            int number in cuts
                .Cuts.Select(c => c.Number)
                .Except(strips.SelectMany(s => s.View.Cuts).Select(c => c.Number))
        )
        {
            yield return $"{board.Id}: cut {number} is in no strip";
        }

        foreach (
            PieceId id in board
                .Pieces.Select(p => p.Piece.Id)
                .Except(
                    strips
                        .Where(s => !s.View.IsOverview)
                        .SelectMany(s => s.View.Pieces)
                        .Select(p => p.Piece.Id)
                )
        )
        {
            yield return $"{board.Id}: {id} is in no strip";
        }
    }

    /// <summary>A number stands on its own cut, or a thin line leads from it to there.</summary>
    private static string? Wrong(Strip strip, CircleShape[] rings, SawCut cut)
    {
        string number = NumberText.Trimmed(cut.Number, 0);
        CircleShape[] own =
        [
            .. rings.Where(r =>
                strip.Words.Any(l => l.Text == number && l.At.ChordTo(r.Centre) < 1e-9)
            ),
        ];
        if (own.Length != 1)
        {
            return $"has {own.Length} numbers";
        }

        Vec2[] reaches =
        [
            own[0].Centre,
            .. strip
                .Lines.Where(l =>
                    l.Points.Length == 2
                    && Math.Abs(l.Points[0].ChordTo(own[0].Centre) - own[0].RadiusMm) < 1e-9
                )
                .Select(l => l.Points[1]),
        ];
        return reaches.Any(p => Strip.Off(cut, strip.OnBoard(p)) * strip.Factor < 0.2)
            ? null
            : "has a number that does not lead to it";
    }
}
