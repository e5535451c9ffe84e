using System.Runtime.CompilerServices;
using System.Security.Cryptography;

namespace System;

/// <summary>Members that later frameworks have themselves.</summary>
internal static class LaterMembers
{
    extension(Enum)
    {
        public static bool IsDefined<TEnum>(TEnum value) where TEnum : struct, Enum => Enum.IsDefined(typeof(TEnum), value);

        public static TEnum[] GetValues<TEnum>() where TEnum : struct, Enum => (TEnum[])Enum.GetValues(typeof(TEnum));
    }

    extension(ArgumentNullException)
    {
        public static void ThrowIfNull(object? argument, [CallerArgumentExpression(nameof(argument))] string? name = null)
        {
            if (argument is null) throw new ArgumentNullException(name);
        }
    }

    extension(SHA256)
    {
        public static byte[] HashData(byte[] bytes)
        {
            using var sha = SHA256.Create();
            return sha.ComputeHash(bytes);
        }
    }

    public static bool Contains(this string text, string part, StringComparison comparison) => text.IndexOf(part, comparison) >= 0;
}
