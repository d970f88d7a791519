namespace PlankFit.Tests.Architecture;

/// <summary>What needs each other, whether straight or by way of others: Tarjan's strongly connected components (Depth-first search and linear graph algorithms, 1972, from memory).</summary>
internal static class Circles
{
    /// <summary>Every set of more than one, each in order of name.</summary>
    public static IReadOnlyList<string[]> Of(IEnumerable<(string From, string To)> arrows)
    {
        ILookup<string, string> next = arrows.ToLookup(a => a.From, a => a.To);
        var index = new Dictionary<string, int>();
        var low = new Dictionary<string, int>();
        var path = new Stack<string>();
        var found = new List<string[]>();
        foreach (string from in next.Select(g => g.Key).Order(StringComparer.Ordinal))
        {
            if (!index.ContainsKey(from))
            {
                Visit(from);
            }
        }

        return found;

        void Visit(string one)
        {
            index[one] = low[one] = index.Count;
            path.Push(one);
            foreach (string to in next[one])
            {
                if (!index.TryGetValue(to, out int at))
                {
                    Visit(to);
                    low[one] = Math.Min(low[one], low[to]);
                }
                else if (path.Contains(to))
                {
                    low[one] = Math.Min(low[one], at);
                }
            }

            if (low[one] != index[one])
            {
                return;
            }

            var circle = new List<string>();
            string last;
            do
            {
                last = path.Pop();
                circle.Add(last);
            } while (last != one);

            if (circle.Count > 1)
            {
                found.Add([.. circle.Order(StringComparer.Ordinal)]);
            }
        }
    }
}
