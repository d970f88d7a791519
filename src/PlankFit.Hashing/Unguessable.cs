using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace PlankFit.Hashing;

/// <summary>
/// What nobody can guess, from the system: on Linux from its kernel (getrandom(2)), since the runtime's own asks for OpenSSL there and ends the program where there is
/// none; elsewhere from the runtime's own.
/// </summary>
public static class Unguessable
{
    /// <summary>So many the kernel gives in one piece, whatever interrupts it.</summary>
    private const int MostAtOnce = 256;

    public static byte[] Bytes(int count)
    {
        byte[] bytes = new byte[count];
        if (!OperatingSystem.IsLinux())
        {
            RandomNumberGenerator.Fill(bytes);
            return bytes;
        }

        for (int from = 0; from < count; )
        {
            byte[] piece = new byte[Math.Min(MostAtOnce, count - from)];
            if (getrandom(piece, piece.Length, 0) != piece.Length)
            {
                throw new InvalidOperationException(
                    "the system gave no random numbers: "
                        + Marshal.GetLastPInvokeError().ToString(CultureInfo.InvariantCulture)
                );
            }

            piece.CopyTo(bytes, from);
            from += piece.Length;
        }

        return bytes;
    }

    /// <summary>So many digits from 0 to 9, each as likely as any other.</summary>
    public static string Digits(int count)
    {
        // Of 256 values the last six would make six digits likelier: they are passed over.
        const int Fair = 250;
        char[] digits = new char[count];
        for (int i = 0; i < count; )
        {
            foreach (byte b in Bytes(MostAtOnce).Where(b => b < Fair).Take(count - i))
            {
                digits[i++] = (char)('0' + b % 10);
            }
        }

        return new(digits);
    }

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint getrandom([Out] byte[] buffer, nint length, uint flags);
}
