namespace PlankFit.Geometry.Development;

/// <summary>Fans of rulings through a corner: a cone over the other edge, developable by itself.</summary>
internal static class RulingFans
{
    private const int Segments = 12;

    public static void Add(
        RulingCondition condition,
        double p0,
        double q0,
        double p1,
        double q1,
        List<RulingSegment> segments,
        List<Ruling> rulings
    )
    {
        double dp = (p1 - p0) / Segments,
            dq = (q1 - q0) / Segments;
        if (dp <= 0 && dq <= 0)
        {
            return;
        }

        for (int k = 0; k < Segments; k++)
        {
            RulingNode Node(double t) => new(p0 + (dp * t), q0 + (dq * t), dp, dq);
            segments.Add(new(Node(k), Node(k + 0.5), Node(k + 1)));
            RulingNode middle = Node(k + 0.5);
            rulings.Add(new(middle.P, middle.Q, true, 0, condition.Length(middle.P, middle.Q)));
        }
    }
}
