namespace PlankFit.Planking.Bending;

/// <summary>What terminal, lists, cards and summary say of a plank that is not trusted with its bend: the same everywhere.</summary>
public static class RefusedBend
{
    /// <summary>Across its card and its patterns.</summary>
    public const string Mark = "DO NOT SAW";

    public const string ToDo =
        "Do not saw: wood of this thickness is not trusted with this bend. Make it up of thinner laminations, or lay the layer at another angle: each lay judges all its planks anew";
}
