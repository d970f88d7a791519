namespace PlankFit.Geometry.Cloth;

/// <summary>The crossings that are laid so far, strip by strip of those that lie equally far from the first line of a diagonal cloth.</summary>
internal sealed class ClothLattice
{
    private readonly Dictionary<int, Strip> strips = [];

    public int Count { get; private set; }

    public bool Has(Knot at) =>
        strips.TryGetValue(at.Second - at.First, out Strip? strip) && strip.Has(at.First);

    public ClothNode? Find(Knot at) =>
        strips.TryGetValue(at.Second - at.First, out Strip? strip) && strip.Has(at.First)
            ? strip[at.First]
            : null;

    /// <summary>The node of a knot that is there.</summary>
    public ClothNode this[Knot at] => strips[at.Second - at.First][at.First];

    public void Add(Knot at, ClothNode node)
    {
        if (!strips.TryGetValue(at.Second - at.First, out Strip? strip))
        {
            strips[at.Second - at.First] = strip = new();
        }

        strip.Add(at.First, node);
        Count++;
    }

    /// <summary>All knots, strip by strip, those of a strip in their order.</summary>
    public IEnumerable<Knot> Knots() =>
        strips
            .OrderBy(s => s.Key)
            .SelectMany(s => s.Value.Places().Select(first => new Knot(first, first + s.Key)));

    /// <summary>Nodes in a row, which grows both ways.</summary>
    private sealed class Strip
    {
        private ClothNode[] nodes = new ClothNode[64];
        private bool[] there = new bool[64];
        private int from;
        private bool any;

        public ClothNode this[int place] => nodes[place - from];

        public bool Has(int place) =>
            any && place >= from && place - from < nodes.Length && there[place - from];

        public void Add(int place, ClothNode node)
        {
            if (!any)
            {
                from = place - (nodes.Length / 2);
                any = true;
            }

            while (place < from || place - from >= nodes.Length)
            {
                Grow();
            }

            nodes[place - from] = node;
            there[place - from] = true;
        }

        public IEnumerable<int> Places()
        {
            for (int i = 0; i < nodes.Length; i++)
            {
                if (there[i])
                {
                    yield return from + i;
                }
            }
        }

        private void Grow()
        {
            int half = nodes.Length / 2;
            var more = new ClothNode[nodes.Length * 2];
            bool[] moreThere = new bool[more.Length];
            nodes.CopyTo(more, half);
            there.CopyTo(moreThere, half);
            (nodes, there) = (more, moreThere);
            from -= half;
        }
    }
}
