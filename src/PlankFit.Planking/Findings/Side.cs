namespace PlankFit.Planking;

public enum Side
{
    Starboard,
    Port,
}
