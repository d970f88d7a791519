using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>How often the saw is set to another angle. Rips and edges are sawn along a fence or by eye, and count for nothing.</summary>
public static class SawSettings
{
    public static int Count(IEnumerable<SawCut> cuts)
    {
        int count = 0;
        double? setting = null;
        foreach (SawCut cut in cuts.Where(IsSet))
        {
            count += cut.Setting == setting ? 0 : 1;
            setting = cut.Setting;
        }

        return count;
    }

    public static bool IsSet(SawCut cut) =>
        cut.Kind is not (CutKind.Rip or CutKind.Edge) && !cut.IsPlaned;

    /// <summary>
    /// The cuts across of all boards as one job: empty ends come off first, then every board is ripped and at hand. Each board's in their own order, and the saw goes on in a setting as long as any
    /// board's next cut has it, then to the next one to the right, and begins again on the left.
    /// </summary>
    public static ImmutableArray<(BoardCutList Board, SawCut Cut)> OneJob(
        IEnumerable<BoardCutList> boards
    )
    {
        (BoardCutList Board, Queue<SawCut> Left)[] open =
        [
            .. boards.Select(b =>
                (b, new Queue<SawCut>(b.Cuts.Where(c => IsSet(c) && c.Kind != CutKind.EndOff)))
            ),
        ];
        ImmutableArray<(BoardCutList, SawCut)>.Builder made = ImmutableArray.CreateBuilder<(
            BoardCutList,
            SawCut
        )>();
        made.AddRange(
            open.SelectMany(o =>
                o.Board.Cuts.Where(c => c.Kind == CutKind.EndOff).Select(c => (o.Board, c))
            )
        );
        double setting = double.NegativeInfinity;
        while (open.Any(o => o.Left.Count > 0))
        {
            double[] next =
            [
                .. open.Where(o => o.Left.Count > 0).Select(o => o.Left.Peek().Setting),
            ];
            setting = next.Where(s => s >= setting).DefaultIfEmpty(next.Min()).Min();
            foreach ((BoardCutList board, Queue<SawCut> left) in open)
            {
                while (left.TryPeek(out SawCut? cut) && cut.Setting == setting)
                {
                    made.Add((board, left.Dequeue()));
                }
            }
        }

        return made.ToImmutable();
    }
}
