using System.Collections.Immutable;
using PlankFit.Export.Joints;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>What a change of the job did to the planks, in words, what is lost by it first.</summary>
public static class PlanChange
{
    /// <summary>Less stock than this is no change to speak of, mm.</summary>
    private const double NothingMm = 100;
    private const int MostNamed = 4;

    /// <summary>2 planks fewer; 1.8 m less stock; S1-03 now to be steamed. Empty where nothing of the kind changed.</summary>
    public static ImmutableArray<string> Words(BottomPlan before, BottomPlan after)
    {
        Plank[] was = [.. All(before)],
            now = [.. All(after)];
        List<(bool Lost, string Words)> said = [];
        Count(said, "plank", was.Length, now.Length);
        double stock = Stock(after) - Stock(before);
        if (Math.Abs(stock) >= NothingMm)
        {
            said.Add(
                (
                    stock > 0,
                    $"{PlanWords.Stock(Math.Abs(stock), after.Job.Units)} {(stock > 0 ? "more" : "less")} stock"
                )
            );
        }

        Count(
            said,
            "tapered plank",
            was.Count(p => p.Kind == PlankKind.Tapered),
            now.Count(p => p.Kind == PlankKind.Tapered)
        );
        Count(
            said,
            "plank fitted at both ends",
            was.Count(p => p.FitBothEnds),
            now.Count(p => p.FitBothEnds),
            "planks fitted at both ends"
        );
        Verdicts(said, was, now);
        return [.. said.OrderByDescending(s => s.Lost).Select(s => s.Words)];
    }

    /// <summary>Planks of which something else is asked when they are bent than before.</summary>
    private static void Verdicts(List<(bool, string)> said, Plank[] was, Plank[] now)
    {
        Dictionary<PlankId, Plank> before = was.ToDictionary(p => p.Id);
        foreach (
            IGrouping<string, Plank> verdict in now.Where(p =>
                    before.TryGetValue(p.Id, out Plank? old) && old.Bend.Verdict != p.Bend.Verdict
                )
                .GroupBy(p => p.Bend.Verdict)
        )
        {
            Plank[] planks = [.. verdict];
            string which =
                string.Join(", ", planks.Take(MostNamed).Select(p => p.Id))
                + (planks.Length > MostNamed ? $" and {planks.Length - MostNamed} more" : "");
            said.Add(
                (planks.Any(p => p.Bend.Way > before[p.Id].Bend.Way), $"{which} now: {verdict.Key}")
            );
        }
    }

    private static void Count(
        List<(bool, string)> said,
        string one,
        int was,
        int now,
        string? several = null
    )
    {
        int by = Math.Abs(now - was);
        if (by > 0)
        {
            said.Add(
                (
                    now > was,
                    $"{by} {(by == 1 ? one : several ?? one + "s")} {(now > was ? "more" : "fewer")}"
                )
            );
        }
    }

    private static IEnumerable<Plank> All(BottomPlan plan) =>
        plan.AllPlankLayers.SelectMany(l => Enum.GetValues<Side>().SelectMany(s => l.Layer.On(s)));

    private static double Stock(BottomPlan plan) =>
        All(plan).Sum(p => JointWords.StockMm(plan.PanelOf(p.Id), p));
}
