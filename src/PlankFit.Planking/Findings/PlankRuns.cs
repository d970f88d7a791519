namespace PlankFit.Planking.Findings;

/// <summary>Names of planks as people read them: "S1-03, S1-08 to 14".</summary>
public static class PlankRuns
{
    /// <summary>S1-08 to 14; S1-08.</summary>
    public static string Run(PlankId first, PlankId last) =>
        first == last ? first.ToString() : $"{first} to {last.Padded}";

    /// <summary>Names in order, planks one after the other of a side and layer as a run.</summary>
    public static string Of(IEnumerable<PlankId> planks)
    {
        List<(PlankId First, PlankId Last)> runs = [];
        foreach (PlankId id in planks.Order())
        {
            if (
                runs.Count > 0
                && runs[^1].Last is var last
                && last with { Number = last.Number + 1 } == id
            )
            {
                runs[^1] = (runs[^1].First, id);
            }
            else
            {
                runs.Add((id, id));
            }
        }

        return string.Join(", ", runs.Select(r => Run(r.First, r.Last)));
    }
}
